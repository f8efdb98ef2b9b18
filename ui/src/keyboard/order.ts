// The order in which one goes through what can be pressed and typed at: what is asked for, then the main button, then the rest.

/** Which comes before which: the lower, the sooner. */
export type Rank = 0 | 1 | 2 | 3;

/** What it is, as far as the order asks. */
export interface Kind {
  /** It is asked for and not in yet, or it is a field. */
  asked: boolean;
  /** It is the main button. */
  main: boolean;
  /** It is a key of a keypad on the screen. */
  key: boolean;
}

/** What is asked for comes first, the main button after it; the keys of a keypad come last, as there is a real keyboard. */
export function rank({ asked, main, key }: Kind): Rank {
  if (asked) return 0;
  if (main) return 1;
  return key ? 3 : 2;
}

/** Everything in order; what has the same rank stays as it stands on the screen. */
export function ordered<Stop>(stops: Stop[], kindOf: (stop: Stop) => Kind): Stop[] {
  return stops
    .map((stop) => ({ stop, rank: rank(kindOf(stop)) }))
    .sort((one, other) => one.rank - other.rank)
    .map(({ stop }) => stop);
}

/** Which way one goes through it. */
export type Way = "on" | "back";

/** The one after `from`, or before it, and round at the ends; where `from` is none of them, one begins at an end. */
export function after<Stop>(stops: Stop[], from: Stop | null, way: Way = "on"): Stop | null {
  const at = from === null ? -1 : stops.indexOf(from);
  if (way === "on") return stops[(at + 1) % stops.length] ?? null;
  return stops[(Math.max(at, 0) + stops.length - 1) % stops.length] ?? null;
}
