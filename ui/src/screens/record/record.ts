// Where to go from what a record lacks.
import type { JobView, RecordPage, StepView } from "../../core/types";

/** The step to go on to: the first missing thing that is at one which can begin or is in progress, else the first at any. */
export function goesOnTo(view: Pick<JobView, "steps">, missing: RecordPage["missing"]): StepView | null {
  const at = missing.flatMap((group) => group.what).map((one) => one.step);
  const steps = at.flatMap((id) => view.steps.filter((step) => step.id === id));
  return steps.find((step) => step.shown === "in_progress" || step.shown === "open") ?? steps[0] ?? null;
}

/** More of a kind than this are folded into one row with their number. */
const FEW = 3;

/** Whether so much of a kind is missing that it is folded. */
export function isMany(group: RecordPage["missing"][number]): boolean {
  return group.what.length > FEW;
}
