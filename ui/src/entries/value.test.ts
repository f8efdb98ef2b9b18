import { expect, test } from "vitest";
import type { EntryValue, EntryView, ItemView, StickReading, Tool } from "../core/types";
import type { TypedEntry } from "./kinds";
import { stageTargets } from "./torque";
import {
  askedText,
  asValue,
  type Draft,
  draftText,
  emptyDraft,
  isBlank,
  openDraft,
  readDraft,
  standing,
  valueText,
} from "./value";

const ITEMS: ItemView[] = [
  { id: "short_bolts", name: "short pan bolts", count: 14, reuse: "yes" },
  { id: "long_bolts", name: "long pan bolts", count: 2, reuse: "yes" },
];

const WRENCH: Tool = { name: "W1", min: "2", max: "12", unit: "N·m", calibration_due: "2026-09-30" };

function entry(ask: TypedEntry["ask"], more: Partial<EntryView> = {}): TypedEntry {
  const view: Omit<EntryView, "ask"> = {
    id: "entry",
    ends: [],
    label: "Entry",
    optional: false,
    limits: [],
    units: [],
    temperature_units: [],
    torque: null,
    estimate: null,
    overload: [],
    coils: [],
    bolts: null,
    decision: null,
    value: null,
    class: null,
    not_yet: false,
    said: [],
    ms_left: null,
    ...more,
  };
  return { ...view, ask } as TypedEntry;
}

const reading = entry(
  { reading: { unit: "°C", at_most: null, at_least: null, within: "warm" } },
  { units: ["°C", "°F"], limits: [{ id: "limit", args: {}, text: "40 °C to 70 °C" }] },
);
const level = entry(
  { level: { chart: "chart", gain: null, added: null, may_give_up: false } },
  { units: ["mm", "in"], temperature_units: ["°C", "°F"] },
);
const count = entry({ count: { of: { short_bolts: 14, long_bolts: 2 } } });
const stage = (value: string) => ({ value, unit: "N·m" });
const torque = entry(
  { torque: { spec: "pan", of: [], guarded: false, exceptions: [] } },
  { units: ["N·m", "lbf·in"], torque: { stages: [stage("4"), stage("9")], angle: null } },
);
const choice = entry({
  choice: {
    options: [
      { class: "clear", label: "clear red or amber" },
      { class: "dark", label: "dark" },
    ],
    hands_did: false,
  },
});
const note = entry({ note: { words: [], words_of: null } });
const timer = entry({ timer: { at_least: "watch" } });

const wet = (temperature: string, value: string): StickReading => ({
  temperature,
  temperature_unit: "°C",
  stick: { trace: { value, unit: "mm" } },
});
const dry = (temperature: string): StickReading => ({
  temperature,
  temperature_unit: "°C",
  stick: "no_trace",
});

test("a reading keeps its comma and its unit, from the draft to the value and on the row", () => {
  const draft: Draft = { reading: { value: "136,5", unit: "°F" } };
  const again = openDraft(reading, JSON.stringify(draft), null);
  expect(asValue(reading, again).value).toEqual({ reading: { value: "136,5", unit: "°F" } });
  expect(valueText(reading, asValue(reading, again).value as EntryValue, ITEMS)).toBe("136,5 °F");
});

test("typing begins empty, in the usual unit", () => {
  expect(emptyDraft(reading)).toEqual({ reading: { value: "", unit: "°C" } });
  for (const one of [reading, level, count, torque, choice, note, timer])
    expect(isBlank(one, emptyDraft(one))).toBe(true);
});

test("what is typed goes before what was entered, and nothing typed gives way to it", () => {
  const entered: EntryValue = { reading: { value: "63", unit: "°C" } };
  expect(openDraft(reading, '{"reading":{"value":"4","unit":"°C"}}', entered)).toEqual({
    reading: { value: "4", unit: "°C" },
  });
  expect(openDraft(reading, '{"reading":{"value":"","unit":"°C"}}', entered)).toEqual(entered);
  expect(openDraft(reading, undefined, entered)).toEqual(entered);
});

test("a draft that can't be one of this entry is forgotten", () => {
  for (const text of [
    "",
    "63",
    "null",
    "[]",
    '{"note":{"text":"x"}}',
    '{"reading":{"value":6,"unit":"°C"}}',
    '{"reading":null}',
    '{"reading":{"value":"6"}',
  ])
    expect(readDraft(reading, text)).toBeNull();
  expect(readDraft(torque, '{"torque":{"stages":["4"],"unit":"N·m","tool":null}}')).toBeNull();
  expect(
    readDraft(level, '{"level":{"readings":[{"temperature":"58"}],"confirmed_no_trace":false}}'),
  ).toBeNull();
});

test("a level with no trace says so, and readings that were not typed are left out", () => {
  const draft: Draft = {
    level: { readings: [wet("58", "17,5"), dry("58"), wet("", "")], confirmed_no_trace: true },
  };
  const value = asValue(level, draft).value as EntryValue;
  expect(value).toEqual({ level: { readings: [wet("58", "17,5"), dry("58")], confirmed_no_trace: true } });
  expect(valueText(level, value, ITEMS)).toBe("58 °C 17,5 mm · 58 °C no trace");
});

test("a level entered with one reading opens with room for the second", () => {
  const one: EntryValue = { level: { readings: [wet("58", "17")], confirmed_no_trace: false } };
  expect(openDraft(level, undefined, one)).toEqual({
    level: { readings: [wet("58", "17"), wet("", "")], confirmed_no_trace: false },
  });
});

test("a count names its items with what was expected", () => {
  const value: EntryValue = { count: { of: { short_bolts: 13, long_bolts: 2 }, accounted: null } };
  expect(valueText(count, value, ITEMS)).toBe("short pan bolts 13/14, long pan bolts 2/2");
  const one = entry({ count: { of: { long_bolts: 2 } } });
  expect(valueText(one, { count: { of: { long_bolts: 1 } } }, ITEMS)).toBe("1/2");
});

test("a torque is no value before a tool is chosen", () => {
  const stages = { stages: ["4", "9,0"], unit: "N·m" };
  expect(asValue(torque, { torque: { ...stages, tool: null } })).toEqual({
    value: null,
    missing: "Choose the torque wrench.",
  });
  const value = asValue(torque, { torque: { ...stages, tool: WRENCH } }).value as EntryValue;
  expect(valueText(torque, value, ITEMS)).toBe("4 · 9,0 N·m");
});

test("each stage has the sheet's number and unit, and an entry of another kind has none", () => {
  expect(stageTargets(torque)).toEqual([stage("4"), stage("9")]);
  expect(stageTargets(reading)).toEqual([]);
});

test("an answer is shown by its words", () => {
  expect(valueText(choice, { choice: { class: "clear" } }, ITEMS)).toBe("clear red or amber");
  expect(asValue(choice, emptyDraft(choice)).value).toBeNull();
});

test("a note keeps ten thousand characters and a script as text", () => {
  const text = `<script>alert(1)</script>${"ä".repeat(10_000)}`;
  const again = openDraft(note, JSON.stringify({ note: { text } }), null);
  expect(asValue(note, again).value).toEqual({ note: { text } });
});

test("a row shows a draft only where it differs from what is entered", () => {
  const entered: EntryValue = { reading: { value: "63", unit: "°C" } };
  expect(draftText(reading, JSON.stringify(entered), entered, ITEMS)).toBeNull();
  expect(draftText(reading, '{"reading":{"value":"6","unit":"°C"}}', entered, ITEMS)).toBe("6 °C");
  expect(draftText(reading, '{"reading":{"value":"","unit":"°C"}}', null, ITEMS)).toBeNull();
  expect(draftText(torque, '{"torque":{"stages":["4",""],"unit":"N·m","tool":null}}', null, ITEMS)).toBe(
    "begun",
  );
});

test("how an entry stands: empty, typed, entered, not yet, running, over", () => {
  const value: EntryValue = { reading: { value: "63", unit: "°C" } };
  expect(standing(reading, null, false, 0)).toBe("empty");
  expect(standing(reading, value, true, 0)).toBe("typed");
  expect(standing({ ...reading, value }, value, false, 0)).toBe("entered");
  expect(standing({ ...reading, value, not_yet: true }, value, false, 0)).toBe("not_yet");
  expect(standing({ ...timer, ms_left: 60_000 }, null, false, 59_999)).toBe("running");
  expect(standing({ ...timer, ms_left: 60_000 }, null, false, 60_000)).toBe("over");
  expect(standing({ ...timer, ms_left: 0 }, { timer: {} }, false, 0)).toBe("entered");
});

test("beside the label stand the limits, else the units", () => {
  expect(askedText(reading)).toBe("40 °C to 70 °C");
  expect(askedText({ ...reading, limits: [] })).toBe("°C, °F");
  expect(askedText(entry({ photo: { of: "the pan", with_scale: true, first_page: false } }))).toBe(
    "the pan · with a scale beside it",
  );
});

test("a coil, a hot part and a balance are typed, kept and told in short", () => {
  const coil = entry(
    { coil: { limits: "coil", at: null } },
    { units: ["Ω"], temperature_units: ["°C", "°F"], overload: ["OL", "0L"] },
  );
  const started = emptyDraft(coil);
  expect(started).toEqual({ coil: { shows: "", unit: "Ω", temperature: "", temperature_unit: "°C" } });
  expect(isBlank(coil, started)).toBe(true);
  const open = { coil: { shows: "OL", unit: "Ω", temperature: "20", temperature_unit: "°C" } };
  expect(valueText(coil, open, ITEMS)).toBe("OL (20 °C)");
  const shows = (text: string) => valueText(coil, { coil: { ...open.coil, shows: text } }, ITEMS);
  expect([shows("0L"), shows("0l"), shows("5.2")]).toEqual(["0L (20 °C)", "0l (20 °C)", "5.2 Ω (20 °C)"]);
  expect(readDraft(coil, JSON.stringify(open))).toEqual(open);

  const list = entry(
    { coils: { of: "coils", at: null, some: false } },
    { units: ["Ω"], temperature_units: ["°C"], overload: ["OL"], coils: ["shift 1", "shift 2"] },
  );
  const blank = emptyDraft(list);
  expect(isBlank(list, blank)).toBe(true);
  const one = [
    { coil: "shift 1", shows: "6.2" },
    { coil: "shift 2", shows: "" },
  ];
  const begun = { coils: { readings: one, unit: "Ω", temperature: "62", temperature_unit: "°C" } };
  // What is not measured yet is no reading.
  expect(asValue(list, begun).value).toEqual({ coils: { ...begun.coils, readings: one.slice(0, 1) } });
  const both = {
    coils: { ...begun.coils, readings: [one[0], { coil: "shift 2", shows: "OL" }] },
  } as EntryValue;
  expect(valueText(list, both, ITEMS)).toBe("shift 1 6.2 Ω, shift 2 OL (62 °C)");

  const hot = entry(
    { cool_down: { limit: "touch", place: "joint", heated_by: {} } },
    { units: ["°C", "°F"] },
  );
  expect(emptyDraft(hot)).toEqual({ cool_down: { value: "", unit: "°C", by: "contact" } });
  const probed: EntryValue = { cool_down: { value: "63", unit: "°C", by: "contact" } };
  expect(valueText(hot, probed, ITEMS)).toBe("63 °C");

  const amounts = { drained: [], added: [], density: "density", unseen: "unseen", capacity: null };
  const balance = entry({ balance: amounts }, { temperature_units: ["°C", "°F"] });
  const explained = { reason: "in the new filter", by: "Ada" };
  const told: EntryValue = { balance: { temperature: "20", temperature_unit: "°C", explained } };
  expect(valueText(balance, told, ITEMS)).toBe("in the new filter");
  expect(isBlank(balance, emptyDraft(balance))).toBe(true);
});

test("bolts that are turned by an angle have a field each, and the angle is no stage", () => {
  const angle = { by: { value: "90", unit: "°" }, fasteners: 2 };
  const turned = entry(
    { torque: { spec: "pan", of: [], guarded: false, exceptions: [] } },
    { units: ["N·m"], torque: { stages: [stage("9")], angle } },
  );
  expect(emptyDraft(turned)).toEqual({
    torque: { stages: [""], unit: "N·m", tool: null, angles: ["", ""] },
  });
});
