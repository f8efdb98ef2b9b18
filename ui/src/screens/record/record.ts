// Where to go from what a record lacks.
import type { JobView, RecordPage, StepView } from "../../core/types";

/** The step that a missing thing is named after; nothing where it names none, as with parts that are off. */
export function stepNamed(view: Pick<JobView, "steps">, what: string): StepView | null {
  return view.steps.find((step) => step.title === what) ?? null;
}

/** The step to go on to: the first missing thing that is one and can begin or is in progress, else the first that is one. */
export function goesOnTo(view: Pick<JobView, "steps">, missing: RecordPage["missing"]): StepView | null {
  const steps = missing.flatMap((group) => group.what.map((what) => stepNamed(view, what)));
  const named = steps.filter((step) => step !== null);
  return named.find((step) => step.shown === "in_progress" || step.shown === "open") ?? named[0] ?? null;
}
