// How long a control has stood where it is with what it means: a finger that taps twice must not hit what has just come
// under it.

/** For so long a control must have stood before a tap counts, in milliseconds. */
export const REST_MS = 500;

/** A place on the screen, in CSS pixels. */
export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** How a control is found at a moment. */
export interface Seen {
  /** What a tap on it does, in words; another text is another meaning. */
  means: string;
  /** Where it can be touched; null while it is covered or not on the screen. */
  box: Box | null;
}

/** Where a tap lands; a key has no place. */
export interface Point {
  x: number;
  y: number;
}

/** What was seen of one control, as far back as it counts. */
export class Stood {
  #seen: (Seen & { since: number })[] = [];
  /** When a command that a tap on it made was begun or answered last. */
  #asked = Number.NEGATIVE_INFINITY;

  /** Takes down how the control is found; times are milliseconds of one clock. */
  note(now: number, seen: Seen): void {
    const last = this.#seen.at(-1);
    if (last && last.means === seen.means && sameBox(last.box, seen.box)) return;
    this.#seen.push({ ...seen, since: now });
    // Of what is older, the newest held until the time that counts began.
    while (this.#seen[1] && this.#seen[1].since <= now - REST_MS) this.#seen.shift();
  }

  /** Takes down that a tap on it asked something of the core, or that this was answered. */
  asked(now: number): void {
    this.#asked = now;
  }

  /** Whether a tap counts: for all the time that counts it could be touched there, and meant what it means now. */
  counts(now: number, at: Point | null): boolean {
    const from = now - REST_MS;
    const last = this.#seen.at(-1);
    if (!last || this.#asked > from || (this.#seen[0]?.since ?? now) > from) return false;
    const held = this.#seen.filter((_, number) => (this.#seen[number + 1]?.since ?? now) > from);
    return [last, ...held].every(({ means, box }) => means === last.means && isIn(box, at));
  }
}

function sameBox(one: Box | null, other: Box | null): boolean {
  if (one === null || other === null) return one === other;
  return (
    one.left === other.left &&
    one.top === other.top &&
    one.right === other.right &&
    one.bottom === other.bottom
  );
}

function isIn(box: Box | null, at: Point | null): boolean {
  if (box === null || at === null) return box !== null;
  return at.x >= box.left && at.x <= box.right && at.y >= box.top && at.y <= box.bottom;
}
