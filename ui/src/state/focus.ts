// Which step is put before the technician. It decides only what is looked at, never what is allowed.
import type { JobView, StepView } from "../core/types";

/**
 * The step to show after `after`, or at all: one in progress; else one that can be begun, the next in the file first; else
 * one whose attest has lapsed or that was voided; else the first that waits; else the last.
 */
export function stepToShow(view: JobView, after: string | null): StepView | null {
  const at = view.steps.findIndex((step) => step.id === after);
  const onward = [...view.steps.slice(at + 1), ...view.steps.slice(0, at + 1)];
  const first = (...shown: StepView["shown"][]) => onward.find((step) => shown.includes(step.shown));
  return (
    first("in_progress") ??
    first("open") ??
    first("lapsed", "voided") ??
    first("waiting", "undecided") ??
    view.steps.at(-1) ??
    null
  );
}

/** Whether the job is ending and no step that makes the vehicle safe to leave is left to begin or in somebody's hands. */
export function isToStop(view: Pick<JobView, "over" | "steps">): boolean {
  const works = (step: StepView) =>
    step.shown === "in_progress" || (step.shown === "open" && step.begin === null);
  return view.over === "ending" && !view.steps.some(works);
}

/**
 * The entry to ask for next: the first that is required and has no value that counts; after `from`, then from the top.
 * `from` itself is not asked for again: its value was just entered, and where it is not yet what is needed, it takes time.
 */
export function entryToAsk(
  step: StepView,
  filled: (entry: string) => boolean,
  from: string | null,
): string | null {
  const at = step.entries.findIndex((entry) => entry.id === from);
  const onward = [...step.entries.slice(at + 1), ...step.entries.slice(0, Math.max(at, 0))];
  const next = onward.find((entry) => !entry.optional && !("sign_off" in entry.ask) && !filled(entry.id));
  return next?.id ?? null;
}
