// A coil's resistance with its temperature.
import CoilPad from "../pads/CoilPad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const coil = kind<"coil", ValueOf<"coil">>({
  pad: CoilPad,
  empty: ({ units: [unit = ""], temperature_units: [temperature_unit = ""] }) => ({
    shows: "",
    unit,
    temperature: "",
    temperature_unit,
  }),
  fits: (found): found is ValueOf<"coil"> =>
    hasTexts(found, "shows", "unit", "temperature", "temperature_unit"),
  isBlank: (typed) => typed.shows === "",
  value: (typed) => ({ value: typed }),
  text: ({ shows, unit, temperature, temperature_unit }, { overload }) => {
    // What the meter shows instead of a number has no unit.
    const shown = overload.includes(shows.toUpperCase()) ? shows : `${shows} ${unit}`;
    return `${shown} (${temperature} ${temperature_unit})`;
  },
});
