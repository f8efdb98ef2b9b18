// Any number of answers of a list, or none of them.
import SeveralPad from "../pads/SeveralPad.svelte";
import { kind } from "./kind";
import { isRecord } from "./shape";

/** What is found so far, by the options' ids; nothing of the list may be an answer too. */
export interface SeveralDraft {
  found: string[];
  none: boolean;
}

export const several = kind<"several", SeveralDraft>({
  pad: SeveralPad,
  empty: () => ({ found: [], none: false }),
  fits: (found): found is SeveralDraft => isRecord(found) && Array.isArray(found.found) && "none" in found,
  isBlank: (typed) => typed.found.length === 0 && !typed.none,
  value: ({ found, none }) =>
    found.length === 0 && !none ? { missing: "entry-missing-several" } : { value: { found } },
  text: ({ found }, entry) =>
    entry.ask.several.options
      .filter((option) => found.includes(option.id))
      .map((option) => option.label)
      .join(", "),
  isToldBySentence: ({ found }) => found.length === 0,
});

/** What is found after a tap on one of the list: taken out when it was in, and no longer none. */
export function tapped({ found }: SeveralDraft, id: string): SeveralDraft {
  const rest = found.filter((one) => one !== id);
  return { found: rest.length < found.length ? rest : [...found, id], none: false };
}
