// The fields of a spec sheet's value while it is typed: which there are, what stands in each, and in which unit. What is
// wrong with them is said by the core.
import type {
  SheetAsked,
  SheetGroup,
  SheetValueView,
  TypedIs,
  TypedSheet,
  TypedValue,
} from "../../core/types";
import { say } from "../../words/say";

/** A chart that is typed. */
export type TypedChart = Extract<TypedIs, { chart: unknown }>["chart"];
/** A torque that is typed. */
export type TypedTorque = Extract<TypedIs, { torque: unknown }>["torque"];

/** A list of coils that is typed. */
export type TypedCoils = Extract<TypedIs, { coils: unknown }>["coils"];

/** Where a field of a row is: in which row of which list, and which part of the row. */
export interface InRow {
  list: Rows;
  row: number;
  part: ChartPart | "x" | "y" | CoilPart | null;
}

/** A field for a number or a name. Its id is the one that the core names when something is wrong in it. */
export interface Field {
  id: string;
  /** Null: it is in no row. */
  of: InRow | null;
  /** Which of the value's units it can be typed in; null: its unit is fixed. */
  units: "units" | "temperature_units" | null;
  name: string;
  text: string;
  unit: string;
  /** Words are typed, not a number. */
  words?: true;
}

const CHART_PARTS = ["at", "low", "high"] as const;
type ChartPart = (typeof CHART_PARTS)[number];
const PLACE_PARTS = ["x", "y"] as const;
const COIL_PARTS = ["name", "terminals", "min", "max"] as const;
type CoilPart = (typeof COIL_PARTS)[number];

/** What a value can have more or less of. */
export type Rows = "stages" | "points" | "positions" | "coils";

/** The lists of a value whose rows can be added and taken out, with the fewest it can have. */
export function rowsOf(is: TypedIs): { list: Rows; count: number; least: number }[] {
  if ("chart" in is) return [{ list: "points", count: is.chart.points.length, least: 2 }];
  if ("coils" in is) return [{ list: "coils", count: is.coils.coils.length, least: 1 }];
  if (!("torque" in is)) return [];
  const { stages, positions } = is.torque;
  return [
    { list: "stages", count: stages.length, least: 1 },
    { list: "positions", count: positions.length, least: 0 },
  ];
}

/** The fields for numbers of a value, in the order in which they are typed. */
export function fieldsOf(is: TypedIs): Field[] {
  if ("measure" in is) {
    return [
      {
        id: "value",
        of: null,
        units: "units",
        name: say("screens-sheet-number"),
        text: is.measure.value,
        unit: is.measure.unit,
      },
    ];
  }
  if ("range" in is) {
    const { min, max, unit } = is.range;
    return [
      { id: "min", of: null, units: "units", name: say("screens-sheet-min"), text: min, unit },
      { id: "max", of: null, units: "units", name: say("screens-sheet-max"), text: max, unit },
    ];
  }
  if ("count" in is) {
    return [
      { id: "value", of: null, units: null, name: say("screens-sheet-count"), text: is.count, unit: "" },
    ];
  }
  if ("torque" in is) return torqueFields(is.torque);
  if ("coils" in is) return coilFields(is.coils);
  return "chart" in is ? chartFields(is.chart) : [];
}

/** Where a field is, with the id that the core has for it. */
function inRow(list: Rows, row: number, part: InRow["part"]): Pick<Field, "id" | "of"> {
  return { id: part === null ? `${list}/${row}` : `${list}/${row}/${part}`, of: { list, row, part } };
}

function torqueFields(torque: TypedTorque): Field[] {
  const { fasteners, stages, unit, tolerance_percent, positions } = torque;
  return [
    {
      id: "fasteners",
      of: null,
      units: null,
      name: say("screens-sheet-fasteners"),
      text: fasteners,
      unit: "",
    },
    ...stages.map((text, at) => ({
      ...inRow("stages", at, null),
      units: "units" as const,
      name: say("screens-sheet-stage", { number: at + 1 }),
      text,
      unit,
    })),
    {
      id: "tolerance_percent",
      of: null,
      units: null,
      name: say("screens-sheet-tolerance"),
      text: tolerance_percent,
      unit: "%",
    },
    ...positions.flatMap((position, at) =>
      PLACE_PARTS.map((part) => ({
        ...inRow("positions", at, part),
        units: null,
        name: say(`screens-sheet-place-${part}`, { number: at + 1 }),
        text: position[part],
        unit: "mm",
      })),
    ),
  ];
}

function chartFields(chart: TypedChart): Field[] {
  const { points, temperature_unit, length_unit, agreement } = chart;
  const rows = points.flatMap((point, at) =>
    CHART_PARTS.map((part) => ({
      ...inRow("points", at, part),
      units: part === "at" ? ("temperature_units" as const) : ("units" as const),
      name: say(`screens-sheet-${part}`, { number: at + 1 }),
      text: point[part],
      unit: part === "at" ? temperature_unit : length_unit,
    })),
  );
  return [
    ...rows,
    {
      id: "agreement",
      of: null,
      units: "units",
      name: say("screens-sheet-agreement"),
      text: agreement,
      unit: length_unit,
    },
  ];
}

function coilFields({ unit, coils }: TypedCoils): Field[] {
  return coils.flatMap((coil, at) =>
    COIL_PARTS.map((part) => {
      const words = part === "name" || part === "terminals";
      return {
        ...inRow("coils", at, part),
        units: words ? null : ("units" as const),
        name: say(`screens-sheet-coil-${part}`, { number: at + 1 }),
        text: coil[part],
        unit: words ? "" : unit,
        ...(words && { words }),
      };
    }),
  );
}

function fieldOf(is: TypedIs, id: string): Field | undefined {
  return fieldsOf(is).find((field) => field.id === id);
}

/** The id of the first field of a row. */
export function firstOfRow(is: TypedIs, list: Rows, row: number): string {
  return fieldsOf(is).find(({ of }) => of?.list === list && of.row === row)?.id ?? "";
}

/** The value with another text in one field. */
export function withField(is: TypedIs, id: string, text: string): TypedIs {
  const { list = null, row: place = 0, part = null } = fieldOf(is, id)?.of ?? {};
  if ("measure" in is) return { measure: { ...is.measure, value: text } };
  if ("range" in is) return { range: { ...is.range, [id]: text } };
  if ("torque" in is) {
    if (list === "positions") {
      const positions = is.torque.positions.map((old, n) =>
        n === place ? { ...old, [part as "x" | "y"]: text } : old,
      );
      return { torque: { ...is.torque, positions } };
    }
    if (list !== "stages") return { torque: { ...is.torque, [id]: text } };
    return { torque: { ...is.torque, stages: is.torque.stages.map((old, n) => (n === place ? text : old)) } };
  }
  if ("coils" in is) {
    const coils = is.coils.coils.map((old, n) => (n === place ? { ...old, [part as CoilPart]: text } : old));
    return { coils: { ...is.coils, coils } };
  }
  if ("chart" in is) {
    if (list !== "points") return { chart: { ...is.chart, [id]: text } };
    const points = is.chart.points.map((old, n) =>
      n === place ? { ...old, [part as ChartPart]: text } : old,
    );
    return { chart: { ...is.chart, points } };
  }
  if ("count" in is) return { count: text };
  return "fact" in is ? { fact: text } : { text };
}

/** The units that a field can be typed in. */
export function unitsOf(view: SheetValueView, field: Field): string[] {
  return field.units === null ? [] : view[field.units];
}

/** The value with a field in another unit, and every field that shares it. */
export function withUnit(is: TypedIs, id: string, unit: string): TypedIs {
  if ("measure" in is) return { measure: { ...is.measure, unit } };
  if ("range" in is) return { range: { ...is.range, unit } };
  if ("torque" in is) return { torque: { ...is.torque, unit } };
  if ("coils" in is) return { coils: { ...is.coils, unit } };
  if (!("chart" in is)) return is;
  return {
    chart:
      fieldOf(is, id)?.units === "temperature_units"
        ? { ...is.chart, temperature_unit: unit }
        : { ...is.chart, length_unit: unit },
  };
}

/** The value with one more row in a list, blank. */
export function withAnother(is: TypedIs, list: Rows): TypedIs {
  if ("torque" in is) {
    const { stages, positions } = is.torque;
    return list === "stages"
      ? { torque: { ...is.torque, stages: [...stages, ""] } }
      : { torque: { ...is.torque, positions: [...positions, { x: "", y: "", note: "" }] } };
  }
  if ("coils" in is) {
    // Coils of one transmission mostly have the limits of the one before.
    const { min = "", max = "" } = is.coils.coils.at(-1) ?? {};
    return { coils: { ...is.coils, coils: [...is.coils.coils, { name: "", terminals: "", min, max }] } };
  }
  if (!("chart" in is)) return is;
  return { chart: { ...is.chart, points: [...is.chart.points, { at: "", low: "", high: "" }] } };
}

/** The value without a row of a list. */
export function withoutOne(is: TypedIs, list: Rows, place: number): TypedIs {
  const rest = <One>(all: One[]) => all.filter((_, at) => at !== place);
  if ("chart" in is) return { chart: { ...is.chart, points: rest(is.chart.points) } };
  if ("coils" in is) return { coils: { ...is.coils, coils: rest(is.coils.coils) } };
  if (!("torque" in is)) return is;
  const { stages, positions } = is.torque;
  return list === "stages"
    ? { torque: { ...is.torque, stages: rest(stages) } }
    : { torque: { ...is.torque, positions: rest(positions) } };
}

/** A chart in which a row has the marks of the row before. */
export function withMarksBefore(is: TypedIs, row: number): TypedIs {
  const before = "chart" in is ? is.chart.points[row - 1] : undefined;
  if (!("chart" in is) || !before) return is;
  const { low, high } = before;
  const points = is.chart.points.map((point, at) => (at === row ? { ...point, low, high } : point));
  return { chart: { ...is.chart, points } };
}

/** Tolerances of a torque that can be tapped, in percent. */
export const TOLERANCES = ["4", "5", "10", "15"];

/** A count after a tap on minus or plus. */
export function stepped(count: string, by: 1 | -1): string {
  const now = /^\d+$/.test(count.trim()) ? Number(count) : null;
  if (now === null) return by === 1 ? "1" : "0";
  return String(Math.max(0, now + by));
}

/** A value as one line, as it is typed so far; `fasteners`: how many are counted. */
export function saysValue(is: TypedIs, fasteners: number | null = null): string {
  const blank = say("screens-sheet-blank");
  const typed = (text: string) => (text.trim() === "" ? blank : text);
  if ("measure" in is) {
    return is.measure.value.trim() === "" ? blank : `${is.measure.value} ${is.measure.unit}`;
  }
  if ("range" in is) {
    const { min, max, unit } = is.range;
    return say("screens-sheet-says-range", { min: typed(min), max: typed(max), unit });
  }
  if ("torque" in is) {
    const { stages, unit, tolerance_percent } = is.torque;
    const targets = stages.map(typed).join(", ");
    return say("screens-sheet-says-torque", {
      fasteners: typed(is.torque.fasteners || String(fasteners ?? "")),
      targets,
      unit,
      tolerance: typed(tolerance_percent),
    });
  }
  if ("chart" in is) {
    const temperatures = is.chart.points.map((point) => typed(point.at)).join(", ");
    return say("screens-sheet-says-chart", { temperatures, unit: is.chart.temperature_unit });
  }
  if ("coils" in is) return is.coils.coils.map((coil) => typed(coil.name)).join(", ");
  if ("count" in is) return typed(is.count);
  return typed("fact" in is ? is.fact : is.text);
}

/** Values by what they are asked for together with, in their order. */
export function groups(views: SheetValueView[]): [SheetGroup, SheetValueView[]][] {
  const all = [...new Set(views.map((view) => view.group))];
  return all.map((group) => [group, views.filter((view) => view.group === group)]);
}

/** What a sheet need not have: what is useful, and what the shop has for all vehicles; none that is empty. */
export function folds(views: SheetValueView[]): [SheetAsked, SheetValueView[]][] {
  const of = (asked: SheetAsked): [SheetAsked, SheetValueView[]] => [
    asked,
    views.filter((view) => view.asked === asked),
  ];
  return [of("useful"), of("shop")].filter(([, values]) => values.length > 0);
}

/** What other values of the sheet come from, what is said most often first: few enough to be tapped. */
export function sourcesOf(values: TypedSheet["values"], besides: string): string[] {
  const counts = new Map<string, number>();
  for (const [key, value] of Object.entries(values)) {
    const source = value?.source.trim() ?? "";
    if (key !== besides && source !== "") counts.set(source, (counts.get(source) ?? 0) + 1);
  }
  const most = [...counts].sort(([, one], [, other]) => other - one);
  return most.slice(0, 3).map(([source]) => source);
}

/** The key of the next value in which something is missing or wrong, after `key` and then from the start. */
export function nextToMend(values: SheetValueView[], key: string | null): string | null {
  const at = values.findIndex((value) => value.key === key);
  const round = [...values.slice(at + 1), ...values.slice(0, Math.max(at, 0))];
  return round.find((value) => value.problems.length > 0)?.key ?? null;
}

/** What is wrong with a value, each with the name of its field. */
export function saysProblems(view: SheetValueView, value: TypedValue): string[] {
  const fields = fieldsOf(value.is);
  return view.problems.map((problem) => {
    const name = fields.length > 1 ? fields.find((field) => field.id === problem.field)?.name : undefined;
    const sentence = problem.message.text ?? problem.message.id;
    return name === undefined ? sentence : `${name}: ${sentence}`;
  });
}
