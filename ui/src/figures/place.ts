// Places for words in a drawing, so that they cover neither each other nor what they belong to. Layout only: what the
// words say and what they belong to is the core's.

export interface Place {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Words that want a place beside a point. */
export interface Wanted {
  at: { x: number; y: number };
  width: number;
  height: number;
}

/** What is around the words. */
export interface Around {
  /** What they never cover. */
  points: Place[];
  /** What they cover only where there is no other room. */
  edges: Place[];
  /** What they stay in. */
  inside: Place;
}

/** Gap between a point and its words, in CSS pixels. */
const GAP = 14;
/** How far words go up or down to find room, in parts of their height. */
const ROWS = [0, 0.7, -0.7, 1.4, -1.4, 2.1, -2.1, 2.8, -2.8, 3.5, -3.5];

/** The top left corner for each, in the order given; null where there is no room. */
export function places(wanted: Wanted[], around: Around): (Place | null)[] {
  const taken = [...around.points];
  return wanted.map((words) => {
    const all = candidates(words).filter(
      (place) => holds(around.inside, place) && !taken.some((other) => meet(other, place)),
    );
    const found = all.find((place) => !around.edges.some((edge) => meet(edge, place))) ?? all[0] ?? null;
    if (found) taken.push(found);
    return found;
  });
}

/** Right of the point, left of it, then the same higher and lower. */
function candidates({ at, width, height }: Wanted): Place[] {
  return ROWS.flatMap((row) => {
    const y = at.y - height / 2 + row * height;
    return [
      { x: at.x + GAP, y, width, height },
      { x: at.x - GAP - width, y, width, height },
    ];
  });
}

function holds(outer: Place, inner: Place): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

function meet(one: Place, other: Place): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}

/** From side to side of a place, as far as no point is within `high` of its middle line; points have this much around them. */
export function betweenPoints(
  points: { x: number; y: number }[],
  inside: Place,
  high: number,
  around: number,
): { x: number; width: number } {
  const middle = { x: inside.x + inside.width / 2, y: inside.y + inside.height / 2 };
  const beside = points.filter((point) => Math.abs(point.y - middle.y) < high + around);
  const left = beside.filter((point) => point.x < middle.x).map((point) => point.x + around);
  const right = beside.filter((point) => point.x >= middle.x).map((point) => point.x - around);
  const x = Math.max(inside.x, ...left);
  return { x, width: Math.max(0, Math.min(inside.x + inside.width, ...right) - x) };
}

/** Small places along a line, `step` CSS pixels apart. */
export function along(line: { x: number; y: number }[], step: number): Place[] {
  return line.slice(1).flatMap((to, at) => {
    const from = line[at] ?? to;
    const parts = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step));
    return Array.from({ length: parts + 1 }, (_, part) => ({
      x: from.x + ((to.x - from.x) * part) / parts - 1,
      y: from.y + ((to.y - from.y) * part) / parts - 1,
      width: 2,
      height: 2,
    }));
  });
}
