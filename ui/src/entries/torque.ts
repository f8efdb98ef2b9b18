// What the sheet asks of a torque entry: stages, and an angle afterwards.
import type { Amount, EntryView } from "../core/types";

type Asked = Pick<EntryView, "torque">;

/** What the wrench is set to for each stage. */
export function stageTargets(entry: Asked): Amount[] {
  return entry.torque?.stages ?? [];
}

/** How many fasteners are turned by an angle after the last stage. */
export function turnedBolts(entry: Asked): number {
  return entry.torque?.angle?.fasteners ?? 0;
}
