// What is said of a number stands beside it: a pad gives it, and the place where numbers are typed shows it.
import { getContext, type Snippet, setContext } from "svelte";

const KEY = Symbol("verdict");

/** What is said, and whether a place for numbers shows it. */
export interface Verdict {
  says: Snippet;
  shown: boolean;
}

/** Given by a pad. */
export function giveVerdict(verdict: Verdict): void {
  setContext(KEY, verdict);
}

/** What the pad around gives; nothing where there is none. */
export function verdict(): Verdict | undefined {
  return getContext<Verdict | undefined>(KEY);
}
