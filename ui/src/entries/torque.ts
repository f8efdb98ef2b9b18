// What the sheet asks of a torque entry: stages, and an angle afterwards.
import type { EntryView } from "../core/types";

type Limits = Pick<EntryView, "limits">;

/** The number and the unit that a stage's wrench is set to by the sheet, as the sheet writes them: `9 N·m`. */
export function stageTarget(entry: Limits, stage: number): { value: string; unit: string } | null {
  return targetOf(entry.limits[stage]);
}

/** The angle that each fastener is turned by afterwards, as the sheet writes it: `90 °`. */
export function angleTarget(entry: Limits): { value: string; unit: string } | null {
  return targetOf(angleLimit(entry));
}

/** The limits of the stages that click; what is turned by an angle afterwards stands beside them. */
export function stageLimits(entry: Limits): EntryView["limits"] {
  return entry.limits.filter((limit) => limit.id !== "limit-angle");
}

/** How many fasteners are turned by an angle after the last stage. */
export function turnedBolts(entry: Limits): number {
  const bolts = angleLimit(entry)?.args.bolts;
  return bolts && "number" in bolts ? bolts.number : 0;
}

function angleLimit(entry: Limits): EntryView["limits"][number] | undefined {
  return entry.limits.find((limit) => limit.id === "limit-angle");
}

/** Number and unit out of the limit's sentence: the view has them nowhere else. */
function targetOf(limit: EntryView["limits"][number] | undefined): { value: string; unit: string } | null {
  const target = limit?.args.target;
  if (!target || !("text" in target)) return null;
  const at = target.text.indexOf(" ");
  return at < 0 ? null : { value: target.text.slice(0, at), unit: target.text.slice(at + 1) };
}
