// A question with its answers. One tap enters.
import ChoicePad from "../pads/ChoicePad.svelte";
import { kind } from "./kind";
import { isRecord } from "./shape";

/** An answer that may not be given yet. */
export interface ChoiceDraft {
  class: string | null;
}

export const choice = kind<"choice", ChoiceDraft>({
  pad: ChoicePad,
  empty: () => ({ class: null }),
  fits: (found): found is ChoiceDraft => isRecord(found) && "class" in found,
  isBlank: (typed) => typed.class === null,
  value: ({ class: chosen }) =>
    chosen === null ? { missing: "entry-missing-choice" } : { value: { class: chosen } },
  text: ({ class: chosen }, entry) =>
    entry.ask.choice.options.find((option) => option.class === chosen)?.label ?? chosen,
  isOneTap: () => true,
  saysItself: true,
});
