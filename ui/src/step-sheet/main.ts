// What the button in the thumb corner does for a step, and what stands beside it. Whether it is allowed comes from the
// view; this only chooses among what the view allows.
import type { EntryValue, Refusal, Signature, StepView } from "../core/types";

/** How a step is being entered: as it is worked, later in one go, or as a correction after it was voided. */
export type Mode = "live" | "later" | "correction";

/** What the main button does. */
export type MainDoes =
  | "begin"
  | "done"
  | "enter_later"
  | "correct"
  | "renew"
  | "explain"
  | "go_on"
  | "stop"
  | "go_on_ended";

/** The main button of a step. */
export interface Main {
  does: MainDoes;
  /** Why it can't be done now. */
  closed: Refusal | null;
  /** Sign-offs that are still to be signed, by id. */
  unsigned: string[];
}

/**
 * What ends the job when the step is done, in a few words: the answer or the entry whose class does. `standing` is what
 * stands at an entry now.
 */
export function endingBy(step: StepView, standing: (entry: string) => EntryValue | null): string | null {
  for (const { id, label, ask, value, class: found, ends } of step.entries) {
    const here = standing(id);
    if (here === null) continue;
    const chosen = chosenClass(here) ?? (here === value ? found : null);
    if (chosen === null || !ends.includes(chosen)) continue;
    const options = "choice" in ask ? ask.choice.options : "decision" in ask ? ask.decision.options : [];
    return options.find((one) => one.class === chosen)?.label ?? label;
  }
  return null;
}

/** The class that a value names. */
function chosenClass(value: EntryValue): string | null {
  if ("choice" in value) return value.choice.class;
  return "decision" in value ? value.decision.class : null;
}

/** The main button for a step with the signatures given so far and, when it is collected, what has no value yet. */
export function mainOf(
  step: StepView,
  mode: Mode,
  signatures: Signature[],
  over: boolean,
  toStop = false,
): Main {
  const unsigned = step.signs.filter((sign) => !signatures.some((given) => given.sign === sign));
  if (mode === "later") return { does: "enter_later", closed: step.begin, unsigned };
  if (mode === "correction") return { does: "correct", closed: null, unsigned };
  if (step.shown === "in_progress") return { does: "done", closed: step.done, unsigned };
  if (over) return { does: "go_on_ended", closed: null, unsigned: [] };
  if (toStop) return { does: "stop", closed: null, unsigned: [] };
  if (step.shown === "lapsed") return { does: "renew", closed: null, unsigned: [] };
  if (step.shown === "voided") return { does: "correct", closed: null, unsigned: [] };
  if (step.shown === "missed" && step.missed_for === null)
    return { does: "explain", closed: null, unsigned: [] };
  if (step.shown === "done" || step.shown === "skipped" || step.shown === "missed") {
    return { does: "go_on", closed: null, unsigned: [] };
  }
  return { does: "begin", closed: step.begin, unsigned: [] };
}
