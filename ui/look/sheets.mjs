// The scenes of spec sheets, over the demo sheet as it lies in the repository.
import { readFileSync } from "node:fs";
import { settled, press as tap } from "./settled.mjs";

const demo = JSON.parse(
  readFileSync(new URL("../../checklists/sheets/demo-six-speed.sheet.json", import.meta.url), "utf8"),
);
const title = "Demo: shop's own wagon, transverse six-speed automatic";

/** Every number of a value as the text in its field. */
function typedIs(is) {
  const texts = (value) => {
    if (typeof value === "number") return String(value);
    if (Array.isArray(value)) return value.map(texts);
    if (typeof value !== "object") return value;
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, texts(part)]));
  };
  if (!is.torque) return texts(is);
  const { positions = [], pattern = "crosswise", ...torque } = is.torque;
  const noted = positions.map((one) => ({ note: "", ...one }));
  return texts({ torque: { ...torque, positions: noted, pattern } });
}

const asked = {
  level_chart: ["Level before judging", "Level at temperature"],
  pan_bolt_torque: ["Hang the pan"],
  solenoid_coils: ["Coils at the case connector, warm"],
  wire_insulation: ["Measure the wires"],
};

/** A sheet's page; `wrong` has what is said about fields, by key. */
function sheetPage({ typing = false, built_in = false, values = {}, wrong = {}, ...typed }) {
  const all = Object.fromEntries(
    Object.entries(demo.values).map(([key, { is, source }]) => [key, { is: typedIs(is), source }]),
  );
  const id = typed.id === undefined ? "own-wagon" : typed.id;
  return {
    typed: {
      draft: id ?? "+1",
      id,
      revision: 3,
      checklist: "pan-and-solenoid",
      title,
      demo: true,
      source: "service information, section 7",
      ...typed,
      values: { ...all, ...values },
    },
    typing,
    built_in,
    fits: typing ? [] : ["Pan drop, filter inspection and shift solenoid"],
    checklists: typing ? list.checklists : [],
    view: {
      title: typed.title === "" ? message("Say which vehicles the sheet is for.") : null,
      values: Object.entries(demo.values).map(([key, { is }], at) => ({
        key,
        name: key.replaceAll("_", " "),
        asked_by: asked[key] ?? [],
        ...said(key, is),
        units: is.chart ? ["mm", "in"] : is.torque ? ["N·m", "lbf·ft", "lbf·in"] : [unitOf(is)],
        temperature_units: is.chart ? ["°C", "°F"] : [],
        choices: is.fact
          ? [
              { id: "no", label: "no" },
              { id: "yes", label: "yes" },
            ]
          : [],
        bolts: is.torque?.positions ? places(is.torque.positions) : null,
        chart: is.chart ? drawn(is.chart.points, key in wrong) : null,
        problems: (wrong[key] ?? []).map(([field, text]) => ({ field, message: message(text) })),
        entered: wrong[key] ? null : { by: "R. Ode", on: "2026-03-02" },
        checked: at % 4 === 1 && !wrong[key] ? { by: "T. Marl", on: "2026-03-03" } : null,
      })),
    },
  };
}

/** How a key is asked for; the core has it from the checklist. */
function said(key, is) {
  const group = is.fact
    ? "vehicle"
    : is.count
      ? "counts"
      : is.torque
        ? "torques"
        : key.startsWith("relearn")
          ? "relearn"
          : ["V", "Ω"].includes(unitOf(is))
            ? "electrical"
            : "fluid";
  const useful = ["fluid_gain", "fluid_unseen", "fluid_specification"].includes(key);
  return {
    group,
    asked: useful ? "useful" : key === "fire_watch_time" ? "shop" : "needed",
    without: useful ? "No amount to add is calculated until it is learned on the job." : null,
    to_check: !is.fact && !is.count && !is.text,
    offer: key === "level_temperature" ? { range: { min: "40", max: "75", unit: "°C" } } : null,
    fasteners: key === "pan_bolt_torque" ? 16 : null,
    taken_from: key === "drain_limit" ? "Demo: five-door wagon, revision 5" : null,
  };
}

/** Fasteners in their places; the core would number them in their order, here they are as on the sheet. */
function places(positions) {
  const ends = (axis) => [
    Math.min(...positions.map((one) => one[axis])),
    Math.max(...positions.map((one) => one[axis])),
  ];
  const [[left, right], [low, high]] = [ends("x"), ends("y")];
  const part = (value, from, to) => Math.round(((value - from) / (to - from)) * 10_000);
  return {
    height: Math.round(((high - low) / (right - left)) * 10_000),
    bolts: positions.map(({ x, y, note = null }, at) => ({
      number: at + 1,
      x: part(x, left, right),
      y: part(y, low, high),
      note,
    })),
    stages: [],
    next: null,
  };
}

/** A chart as the core draws it: axes from 40 to 70 °C and from 0 to 40 mm. */
function drawn(points, crossed) {
  const ticks = (numbers) =>
    numbers.map((number, at) => ({ at: (at * 10_000) / (numbers.length - 1), says: String(number) }));
  const shown = crossed ? [points[0], { at: 58, low: 31, high: 21 }] : points;
  const across = (at) => Math.round(((at - 40) / 30) * 10_000);
  const edge = (mark) => shown.map((point) => ({ x: across(point.at), y: point[mark] * 250 }));
  return {
    plot: {
      across: { unit: "°C", says: null, ticks: ticks([40, 45, 50, 55, 60, 65, 70]) },
      up: { unit: "mm", says: null, ticks: ticks([0, 10, 20, 30, 40]) },
      bands: [{ low: edge("low"), high: edge("high") }],
      columns: [],
      lines: [],
      points: [],
      labels: [],
    },
    points: shown.map(({ at, low, high }, row) => ({
      row,
      at: across(at),
      low: low * 250,
      high: high * 250,
      crossed: low >= high,
    })),
    says: message(
      "The level belongs between the marks at 40 °C: 12–22 mm, 58 °C: 21–31 mm and 70 °C: 27–37 mm; between them the marks run straight.",
    ),
  };
}

const unitOf = (is) => (is.measure ?? is.range ?? is.coils)?.unit ?? "";
const message = (text) => ({ id: "said", args: {}, text });

const list = {
  sheets: [
    {
      id: demo.id,
      title: demo.title,
      revision: 1,
      demo: true,
      built_in: true,
      to_check: 20,
      checked: 0,
      unfinished: false,
      fits: ["Pan drop, filter inspection and shift solenoid"],
    },
    {
      id: "own-wagon",
      title,
      revision: 3,
      demo: true,
      built_in: false,
      to_check: 20,
      checked: 5,
      unfinished: true,
      fits: ["Pan drop, filter inspection and shift solenoid"],
    },
  ],
  unfinished: [{ draft: "+1", title: "" }],
  checklists: [["pan-and-solenoid", "Pan drop, filter inspection and shift solenoid"]],
  unreadable: [],
};

const wrongRange = { range: { min: "90", max: "50", unit: "°C" } };
const crossed = {
  chart: {
    ...typedIs(demo.values.level_chart.is).chart,
    points: [
      { at: "40", low: "12", high: "22" },
      { at: "58", low: "31", high: "21" },
      { at: "70", low: "27", high: "" },
    ],
  },
};
const source = demo.values.level_chart.source;
const kept = sheetPage({});
const typing = sheetPage({
  typing: true,
  values: { relearn_temperature: { is: wrongRange, source }, level_chart: { is: crossed, source } },
  wrong: {
    relearn_temperature: [["min", "The range 90 to 50 is reversed. Correct the sheet."]],
    level_chart: [
      [
        "points/1/low",
        "At 58 °C the chart has 31 mm as low and 21 mm as high mark. The low mark must be 0 or more and below the high mark.",
      ],
      ["points/2/high", "A number is missing. Type it as it stands in the source."],
    ],
  },
});
const good = sheetPage({ typing: true });
const blankChart = structuredClone(typing);
for (const view of blankChart.view.values) view.chart = null;
const blank = sheetPage({ typing: true, id: null, revision: 0, title: "", demo: false });

const ofShop = (key, name, value, unit, kept) => ({
  value: { is: { measure: { value, unit } }, source: "Common practice" },
  view: {
    ...good.view.values.find((view) => view.key === key),
    name,
    asked: "needed",
    problems: [],
    units: [unit],
  },
  kept,
  seen: [],
});
const offered = ofShop("touch_limit_bare_metal", "touch limit of bare metal", "48", "°C", null);
const keptValue = ofShop("fire_watch_time", "fire watch time", "60", "min", {
  by: "R. Ode",
  on: "2026-03-02",
});

const at = (more) => ({
  screen: "sheet",
  sheet: { id: "own-wagon", typing: false, value: null, compared: null, ...more },
});
const typedAt = (value, page = typing, more = {}) => ({
  where: { ...at({ typing: true, value }), ...more },
  answers: { typed_sheet: page, type_sheet: page },
});
const press = (name) => (page) => tap(page, page.getByRole("button", { name }).first());
const below = (page) => page.getByRole("button", { name: "More below" }).first().click();

export const sheets = [
  { name: "setup-sheets", where: { screen: "setup" }, answers: { sheets: list }, taps: [below, settled] },
  {
    name: "setup-sheet-new",
    where: { screen: "setup" },
    answers: { sheets: list },
    taps: ["New spec sheet"],
  },
  { name: "sheet-kept", where: at({}), answers: { sheet: kept } },
  { name: "sheet-built-in", where: at({}), answers: { sheet: { ...kept, built_in: true } } },
  {
    name: "sheet-saved",
    where: at({}),
    answers: {
      sheet: kept,
      export_sheet: "/home/shop/.local/share/panside/bay/sheets/own-wagon-3.sheet.json",
    },
    taps: ["Export to a file"],
  },
  { name: "sheet-check", where: at({ compared: ["battery_rest_voltage"] }), answers: { sheet: kept } },
  { name: "sheet-typing", ...typedAt(null), taps: [press("SAVE")] },
  { name: "sheet-title", where: at({ id: "+1", typing: true, value: "" }), answers: { typed_sheet: blank } },
  { name: "sheet-value", ...typedAt("battery_rest_voltage") },
  { name: "sheet-range", ...typedAt("relearn_temperature") },
  { name: "sheet-coils", ...typedAt("solenoid_coils") },
  { name: "sheet-chart", ...typedAt("level_chart") },
  { name: "sheet-chart-blank", ...typedAt("level_chart", blankChart) },
  { name: "sheet-chart-good", ...typedAt("level_chart", good) },
  { name: "sheet-chart-large", ...typedAt("level_chart", good), taps: ["Show the drawing larger"] },
  { name: "sheet-chart-dark", ...typedAt("level_chart", good, { dark: true }) },
  { name: "sheet-folds", ...typedAt(null, good), taps: [press("that are useful"), settled] },
  { name: "sheet-offer", ...typedAt("level_temperature", good) },
  {
    name: "setup-values",
    where: { screen: "setup" },
    answers: { sheets: list, shop_values: [offered, keptValue] },
    taps: [below, settled],
  },
  {
    name: "setup-value",
    where: { screen: "setup" },
    answers: { shop_values: [offered, keptValue], judge_shop_value: offered.view },
    taps: ["Another value", settled],
  },
  { name: "sheet-torque", ...typedAt("pan_bolt_torque") },
  { name: "sheet-fact", ...typedAt("disconnect_battery_first") },
  { name: "sheet-text", ...typedAt("verdict_table") },
  {
    name: "sheet-gone",
    where: at({ typing: true }),
    answers: {
      typed_sheet: {
        throws: {
          kind: "other",
          message: "Nothing is typed of this spec sheet any more: it was kept or put away.",
        },
      },
    },
  },
];
