// Stick readings while they are typed.
import type { EntryView, StickReading } from "../core/types";

/** A stick reading that is not typed yet. */
export function blankReading(entry: Pick<EntryView, "units" | "temperature_units">): StickReading {
  const stick = { trace: { value: "", unit: entry.units[0] ?? "" } };
  return { temperature: "", temperature_unit: entry.temperature_units[0] ?? "", stick };
}

/** Whether nothing of a reading is typed yet. */
export function isBlankReading(reading: StickReading): boolean {
  return reading.temperature === "" && reading.stick !== "no_trace" && reading.stick.trace.value === "";
}
