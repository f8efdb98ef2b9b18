// What follows from other entries. One tap takes what the table says; going against it asks for a reason and a name.
import type { Accounted, AskDecision } from "../../core/types";
import DecisionPad from "../pads/DecisionPad.svelte";
import { kind } from "./kind";
import { isRecord } from "./shape";

/** A decision that may not be made yet. */
export interface DecisionDraft {
  class: string | null;
  against?: Accounted | null;
}

export const decision = kind<"decision", DecisionDraft>({
  pad: DecisionPad,
  empty: () => ({ class: null }),
  fits: (found): found is DecisionDraft => isRecord(found) && "class" in found,
  isBlank: (typed) => typed.class === null,
  value: ({ class: decided, against }) =>
    decided === null
      ? { missing: "entry-missing-decision" }
      : { value: { class: decided, ...(against && { against }) } },
  text: ({ class: decided }, entry) => optionLabel(entry.ask.decision, decided),
  isOneTap: () => true,
});

/** What a class is called. */
export function optionLabel({ options }: AskDecision, decided: string): string {
  return options.find((option) => option.class === decided)?.label ?? decided;
}

/** What may be decided although the table says otherwise. */
export function otherWays({ against }: AskDecision, table: string): AskDecision["against"] {
  return against.filter((other) => other.class !== table);
}
