// The plan as rows to show: what is done in its order, and what is waited for where it begins.
import type { PlanDoing, PlanPage, PlanWait } from "../core/types";

/** A row of the plan. */
export type Row = { key: string; doing: PlanDoing; waits: PlanWait[] };

/** For how many people a plan can be made. */
export const PEOPLE = [1, 2];

/** For how many people is planned where nobody chose: those of the checklist, as far as plans go. */
export function ownPeople(view: { crew: number }): number {
  return view.crew > 1 ? 2 : 1;
}

/** For how many people is planned: those chosen, or those of the checklist. */
export function plannedPeople(chosen: number | null, view: { crew: number }): number {
  return chosen ?? ownPeople(view);
}

/** Everything that is done but walking and leaving, each with the waits that begin while it is done. */
export function rowsOf(plan: PlanPage): Row[] {
  const done = plan.doings.filter((doing) => doing.does !== "walk" && doing.does !== "leave");
  const rows: Row[] = done.map((doing, at) => ({ key: `${at}/${doing.id}`, doing, waits: [] }));
  for (const wait of plan.waits) {
    // A wait that begins when something is over belongs to that; one that runs already, to what is done first.
    const before = rows.filter((one) => one.doing.from_min < wait.from_min);
    const over = before.filter((one) => one.doing.until_min === wait.from_min);
    (over.at(-1) ?? before.at(-1) ?? rows[0])?.waits.push(wait);
  }
  return rows;
}

/** What of a step is to be said while it waits: whether an entry of it is not yet as it must be, or its time runs. */
export function isWaiting(step: {
  shown: string;
  entries: { not_yet: boolean; ms_left: number | null }[];
}): boolean {
  return (
    step.shown === "in_progress" && step.entries.some((entry) => entry.not_yet || (entry.ms_left ?? 0) > 0)
  );
}
