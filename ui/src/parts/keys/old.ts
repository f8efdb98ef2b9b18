// Whether what stands in the fields of a pad was entered before, and nothing was typed since the pad came up.
import { getContext, setContext } from "svelte";

const KEY = Symbol("old");

/** Said by a pad, for the fields in it. */
export function setOld(isOld: () => boolean): void {
  setContext(KEY, isOld);
}

/** Whether a field that comes up now shows what was entered before: the first key takes its place. */
export function isOld(): boolean {
  return getContext<(() => boolean) | undefined>(KEY)?.() ?? false;
}
