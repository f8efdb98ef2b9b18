// The resistances of the coils on the sheet's list, at one temperature.
import type { CoilsValue } from "../../core/types";
import CoilsPad from "../pads/CoilsPad.svelte";
import { type EntryOf, kind } from "./kind";
import { hasTexts } from "./shape";

/** The value with a place for each coil of the list. */
function withEach(typed: CoilsValue, entry: EntryOf<"coils">): CoilsValue {
  const shown = (coil: string) => typed.readings.find((reading) => reading.coil === coil)?.shows ?? "";
  return { ...typed, readings: entry.coils.map((coil) => ({ coil, shows: shown(coil) })) };
}

export const coils = kind<"coils", CoilsValue>({
  pad: CoilsPad,
  empty: (entry) => {
    const {
      units: [unit = ""],
      temperature_units: [temperature_unit = ""],
    } = entry;
    return withEach({ readings: [], unit, temperature: "", temperature_unit }, entry);
  },
  fits: (found): found is CoilsValue =>
    hasTexts(found, "unit", "temperature", "temperature_unit") && Array.isArray(found["readings"]),
  isBlank: (typed) => typed.readings.every((reading) => reading.shows === ""),
  value: (typed) => ({
    value: { ...typed, readings: typed.readings.filter((reading) => reading.shows !== "") },
  }),
  open: withEach,
  text: ({ readings, unit, temperature, temperature_unit }, { overload }) => {
    // What the meter shows instead of a number has no unit.
    const shown = readings.map(({ coil, shows }) =>
      overload.includes(shows.toUpperCase()) ? `${coil} ${shows}` : `${coil} ${shows} ${unit}`,
    );
    return `${shown.join(", ")} (${temperature} ${temperature_unit})`;
  },
});
