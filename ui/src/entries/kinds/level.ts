// A fluid level by stick readings.
import type { StickReading } from "../../core/types";
import { say } from "../../words/say";
import LevelPad from "../pads/LevelPad.svelte";
import { blankReading, isBlankReading } from "../stick";
import { type EntryOf, kind, type ValueOf } from "./kind";
import { hasTexts, isRecord } from "./shape";

export const level = kind<"level", ValueOf<"level">>({
  pad: LevelPad,
  empty: (entry) => ({ readings: atLeastTwo(entry, []), confirmed_no_trace: false }),
  fits: (found): found is ValueOf<"level"> =>
    isRecord(found) && Array.isArray(found.readings) && found.readings.every(isReading),
  isBlank: (typed) => typed.readings.every(isBlankReading),
  value: (typed) => ({
    value: { ...typed, readings: typed.readings.filter((reading) => !isBlankReading(reading)) },
  }),
  text: (value) => value.readings.map(stickText).join(" · "),
  open: (typed, entry) => ({ ...typed, readings: atLeastTwo(entry, typed.readings) }),
});

/** A level is always known by two readings, so that there is room for two. */
function atLeastTwo(entry: EntryOf<"level">, readings: StickReading[]): StickReading[] {
  return readings.length < 2 ? atLeastTwo(entry, [...readings, blankReading(entry)]) : readings;
}

/** One stick reading: `58 °C 17 mm`. */
function stickText(reading: StickReading): string {
  const stick =
    reading.stick === "no_trace"
      ? say("entry-no-trace")
      : `${reading.stick.trace.value} ${reading.stick.trace.unit}`;
  return `${reading.temperature} ${reading.temperature_unit} ${stick}`;
}

function isReading(found: unknown): found is StickReading {
  if (!hasTexts(found, "temperature", "temperature_unit")) return false;
  const stick = found.stick;
  return stick === "no_trace" || (isRecord(stick) && hasTexts(stick.trace, "value", "unit"));
}
