// What is said for a while across the window: what has become ready elsewhere, what came in and belongs nowhere.

/** For so long it stands, in milliseconds. */
const STANDS_MS = 8_000;

/** How it is heard and felt. */
export type Kind = "ready" | "refused";

class Notice {
  /** What is said now. */
  text = $state<string | null>(null);
  /** What is heard; each is an object of its own, so that the same is heard again. */
  heard = $state.raw<{ kind: Kind } | null>(null);

  #end: ReturnType<typeof setTimeout> | undefined;

  /** Says it until something else is said or its time is over. */
  tell(text: string, kind: Kind): void {
    clearTimeout(this.#end);
    this.text = text;
    this.hear(kind);
    this.#end = setTimeout(() => this.clear(), STANDS_MS);
  }

  /** Is heard only: the screen says it in its own place. */
  hear(kind: Kind): void {
    this.heard = { kind };
  }

  /** Says it no longer. */
  clear(): void {
    clearTimeout(this.#end);
    this.text = null;
  }
}

export const notice = new Notice();
