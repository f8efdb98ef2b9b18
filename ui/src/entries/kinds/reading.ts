// A value with its unit.
import ReadingPad from "../pads/ReadingPad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const reading = kind<"reading", ValueOf<"reading">>({
  pad: ReadingPad,
  empty: (entry) => ({ value: "", unit: entry.units[0] ?? entry.ask.reading.unit }),
  fits: (found): found is ValueOf<"reading"> => hasTexts(found, "value", "unit"),
  isBlank: (typed) => typed.value === "",
  value: (typed) => ({ value: typed }),
  text: ({ value, unit }, { overload }) =>
    // What the meter shows instead of a number has no unit.
    overload.includes(value.toUpperCase()) ? value : `${value} ${unit}`,
  asked: (entry) => (entry.limits.length === 0 ? [entry.units.join(", ")] : []),
});
