import { expect, test } from "vitest";
import type { SheetValueView, TypedIs } from "../../core/types";
import {
  fieldsOf,
  firstOfRow,
  folds,
  groups,
  nextToMend,
  rowsOf,
  saysProblems,
  saysValue,
  sourcesOf,
  stepped,
  unitsOf,
  withAnother,
  withField,
  withMarksBefore,
  withoutOne,
  withUnit,
} from "./sheetFields";

const torque: TypedIs = {
  torque: {
    fasteners: "16",
    stages: ["4", "9"],
    unit: "N·m",
    tolerance_percent: "11",
    positions: [],
    pattern: "crosswise",
  },
};
const chart: TypedIs = {
  chart: {
    temperature_unit: "°C",
    length_unit: "mm",
    points: [
      { at: "40", low: "12", high: "22" },
      { at: "70", low: "27", high: "37" },
    ],
    agreement: "2",
  },
};

function shown(key: string, problems: SheetValueView["problems"] = []): SheetValueView {
  const units = ["mm", "in"];
  const temperature_units = ["°C", "°F"];
  return {
    key,
    name: key,
    asked_by: [],
    group: "fluid",
    asked: "needed",
    without: null,
    to_check: true,
    offer: null,
    fasteners: null,
    taken_from: null,
    units,
    temperature_units,
    choices: [],
    chart: null,
    bolts: null,
    problems,
    entered: null,
    checked: null,
  };
}

function problem(field: string, text: string) {
  return { field, message: { id: "x", args: {}, text } };
}

test("every field of a value can be typed, and only that one changes", () => {
  for (const is of [torque, chart]) {
    for (const field of fieldsOf(is)) {
      const after = fieldsOf(withField(is, field.id, "7,5"));
      expect(after.find((one) => one.id === field.id)?.text).toBe("7,5");
      expect(after.filter((one) => one.id !== field.id)).toEqual(
        fieldsOf(is).filter((one) => one.id !== field.id),
      );
    }
  }
  expect(withField({ range: { min: "1", max: "2", unit: "V" } }, "max", "3")).toEqual({
    range: { min: "1", max: "3", unit: "V" },
  });
  expect(withField({ text: "red" }, "value", "green")).toEqual({ text: "green" });
});

test("a chart's temperatures and its marks change their units apart", () => {
  const units = (view: SheetValueView, is: TypedIs) => fieldsOf(is).map((field) => unitsOf(view, field));
  const [at, low, high] = units(shown("level chart"), chart);
  expect([at, low, high]).toEqual([
    ["°C", "°F"],
    ["mm", "in"],
    ["mm", "in"],
  ]);
  expect(units(shown("level chart"), chart).at(-1)).toEqual(["mm", "in"]);
  expect(units(shown("pan bolts"), torque)[0]).toEqual([]);
  const turned = fieldsOf(withUnit(withUnit(chart, "points/1/at", "°F"), "agreement", "in"));
  expect(new Set(turned.map((field) => field.unit))).toEqual(new Set(["°F", "in"]));
});

test("stages and points are added at the end and taken out where they stand", () => {
  const more = withAnother(chart, "points");
  expect(fieldsOf(more)).toHaveLength(10);
  expect(firstOfRow(more, "points", 2)).toBe("points/2/at");
  expect(withoutOne(more, "points", 2)).toEqual(chart);
  expect(saysValue(withoutOne(torque, "stages", 0))).toContain("9 N·m");
});

test("places of fasteners are typed across and up, and can be left out", () => {
  const placed = withField(withAnother(torque, "positions"), "positions/0/y", "-12,5");
  const ids = fieldsOf(placed).map((field) => field.id);
  expect(ids.slice(-2)).toEqual(["positions/0/x", "positions/0/y"]);
  expect(fieldsOf(placed).at(-1)).toMatchObject({ text: "-12,5", unit: "mm" });
  expect(rowsOf(placed)).toContainEqual({ list: "positions", count: 1, least: 0 });
  expect(withoutOne(placed, "positions", 0)).toEqual(torque);
});

test("a value is one line, with what is not typed yet told as such", () => {
  expect(saysValue({ measure: { value: "48", unit: "°C" } })).toBe("48 °C");
  expect(saysValue({ range: { min: "5,0", max: "", unit: "Ω" } })).toBe("5,0 to – Ω");
  expect(saysValue(torque)).toBe("16 fasteners: 4, 9 N·m ± 11 %");
  expect(saysValue(chart)).toBe("at 40, 70 °C");
  expect(saysValue({ fact: "" })).toBe("–");
});

test("sources that stand on the sheet already are offered, the usual one first", () => {
  const value = (source: string) => ({ is: { text: "x" }, source });
  const values = {
    a: value("page 3"),
    b: value("page 9"),
    c: value("page 9 "),
    d: value(""),
    e: value("own"),
  };
  expect(sourcesOf(values, "e")).toEqual(["page 9", "page 3"]);
});

test("the next value to mend comes after this one, and from the start again", () => {
  const wrong = [problem("", "A number is missing.")];
  const values = [shown("a", wrong), shown("b"), shown("c", wrong)];
  expect(nextToMend(values, "a")).toBe("c");
  expect(nextToMend(values, "c")).toBe("a");
  expect(nextToMend([shown("a")], "a")).toBeNull();
  expect(nextToMend(values, null)).toBe("a");
});

test("what is wrong is told with the name of its field where there are several", () => {
  const view = shown("pan bolts", [
    problem("stages/1", "A number is missing."),
    problem("source", "Say where."),
  ]);
  expect(saysProblems(view, { is: torque, source: "" })).toEqual([
    "Stage 2: A number is missing.",
    "Say where.",
  ]);
});

test("values stand in their groups, and what a sheet need not have is folded", () => {
  const of = (key: string, part: Partial<SheetValueView>) => ({ ...shown(key), ...part });
  const views = [
    of("plug", { group: "vehicle" }),
    of("chart", { group: "fluid" }),
    of("gain", { group: "fluid", asked: "useful" }),
    of("limit", { group: "fluid", asked: "shop" }),
  ];
  expect(groups(views).map(([group, values]) => [group, values.length])).toEqual([
    ["vehicle", 1],
    ["fluid", 3],
  ]);
  expect(folds(views).map(([asked, values]) => [asked, values[0]?.key])).toEqual([
    ["useful", "gain"],
    ["shop", "limit"],
  ]);
  expect(folds([of("plug", {})])).toEqual([]);
});

test("a count goes up and down by taps and never below none", () => {
  expect([stepped("", 1), stepped("", -1), stepped("2", 1), stepped("2", -1), stepped("0", -1)]).toEqual([
    "1",
    "0",
    "3",
    "1",
    "0",
  ]);
});

test("a row of a chart takes the marks of the row before and keeps its temperature", () => {
  const same = withMarksBefore(chart, 1);
  expect("chart" in same && same.chart.points[1]).toEqual({ at: "70", low: "12", high: "22" });
  expect(withMarksBefore(chart, 0)).toEqual(chart);
});

test("a torque says how many fasteners are counted where no other number is typed", () => {
  const counted: TypedIs = { torque: { ...("torque" in torque ? torque.torque : never()), fasteners: "" } };
  expect(saysValue(counted, 16)).toContain("16 fasteners");
});

function never(): never {
  throw new Error("it is a torque");
}
