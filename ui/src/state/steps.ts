// What is done with a step: it is begun, values are entered, it is done, and then the next one is looked at.
import type { Command, EntryValue, Signature, StepView } from "../core/types";
import { currentJob } from "./currentJob.svelte";
import { entryKey } from "./draftKey";
import { drafts } from "./drafts.svelte";
import { stepToShow } from "./focus";
import { nav } from "./nav.svelte";

/** Enters a value at a step; goes into the step first where nobody is in it yet. */
export async function enterAtStep(step: StepView, entry: string, value: EntryValue): Promise<boolean> {
  if (step.shown !== "in_progress" && !(await beginStep(step))) return false;
  const entered = await currentJob.ask({ enter: { step: step.id, entry, value } });
  if (entered) drafts.clear(entryKey(step.id, entry));
  return entered;
}

/** Goes into a step. */
export async function beginStep(step: StepView): Promise<boolean> {
  nav.lookAt(step.id);
  return currentJob.ask({ begin: { step: step.id } });
}

/** Is done with a step, and looks at the next. */
export async function stepDone(step: StepView, signatures: Signature[]): Promise<boolean> {
  const command: Command =
    step.shown === "in_progress"
      ? { done: { step: step.id, signatures } }
      : { work: { step: step.id, entries: {}, signatures, later: false } };
  return onward(step, await currentJob.ask(command));
}

/** Enters a step that was worked before, all in one go. */
export async function enterStepLater(
  step: StepView,
  entries: Record<string, EntryValue>,
  signatures: Signature[],
): Promise<boolean> {
  return onward(step, await currentJob.ask({ work: { step: step.id, entries, signatures, later: true } }));
}

/** Corrects a voided step afterwards. */
export async function correctStep(
  step: StepView,
  entries: Record<string, EntryValue>,
  signatures: Signature[],
  reason: string,
): Promise<boolean> {
  return onward(step, await currentJob.ask({ correct: { step: step.id, entries, signatures, reason } }));
}

function onward(step: StepView, entered: boolean): boolean {
  const view = currentJob.page?.view;
  if (!entered || !view) return false;
  for (const entry of step.entries) drafts.clear(entryKey(step.id, entry.id));
  const next = stepToShow(view, step.id);
  if (next) nav.lookAt(next.id);
  return true;
}
