// Values of entries: as they are kept while they are typed, as they are entered, and in short for a row.
import type { Accounted, Adapter, EntryValue, EntryView, ItemView, StickReading, Tool } from "../core/types";
import { say } from "../words/say";

/** The part of a value that belongs to one kind. */
export type ValueOf<Kind extends string> = Extract<EntryValue, Record<Kind, unknown>>[Kind &
  keyof Extract<EntryValue, Record<Kind, unknown>>];

/** A torque whose tool is not chosen yet. */
export interface TorqueDraft {
  stages: string[];
  unit: string;
  tool: Tool | null;
  adapter?: Adapter | null;
  angles?: string[];
  exception?: Accounted | null;
  /** Fasteners of the stage in work that clicked, where they are entered one by one. */
  done?: number;
}

/** What is typed and not entered: a value in which something can be missing yet. */
export type Draft =
  | { reading: ValueOf<"reading"> }
  | { level: ValueOf<"level"> }
  | { coil: ValueOf<"coil"> }
  | { cool_down: ValueOf<"cool_down"> }
  | { balance: ValueOf<"balance"> }
  | { count: ValueOf<"count"> }
  | { torque: TorqueDraft }
  | { photo: ValueOf<"photo"> | null }
  | { choice: { class: string | null } }
  | { scan: { text: string } }
  | { timer: Record<never, never> }
  | { note: { text: string } }
  | { sign_off: null };

/** A stick reading that is not typed yet. */
export function blankReading(entry: EntryView): StickReading {
  const stick = { trace: { value: "", unit: entry.units[0] ?? "" } };
  return { temperature: "", temperature_unit: entry.temperature_units[0] ?? "", stick };
}

/** Where typing begins. */
export function emptyDraft(entry: EntryView): Draft {
  const ask = entry.ask;
  if ("reading" in ask) return { reading: { value: "", unit: entry.units[0] ?? ask.reading.unit } };
  if ("level" in ask)
    return { level: { readings: [blankReading(entry), blankReading(entry)], confirmed_no_trace: false } };
  if ("coil" in ask) {
    const [unit = ""] = entry.units;
    const [temperature_unit = ""] = entry.temperature_units;
    return { coil: { shows: "", unit, temperature: "", temperature_unit } };
  }
  if ("cool_down" in ask) return { cool_down: { value: "", unit: entry.units[0] ?? "", by: "contact" } };
  if ("balance" in ask)
    return { balance: { temperature: "", temperature_unit: entry.temperature_units[0] ?? "" } };
  if ("count" in ask) return { count: { of: {}, accounted: null } };
  if ("torque" in ask) {
    const angles = Array.from({ length: turnedBolts(entry) }, () => "");
    const stages = stageLimits(entry).map(() => "");
    return {
      torque: { stages, unit: entry.units[0] ?? "", tool: null, ...(angles.length > 0 && { angles }) },
    };
  }
  if ("photo" in ask) return { photo: null };
  if ("choice" in ask) return { choice: { class: null } };
  if ("scan" in ask) return { scan: { text: "" } };
  if ("timer" in ask) return { timer: {} };
  if ("note" in ask) return { note: { text: "" } };
  return { sign_off: null };
}

/** What typing goes on from: what was typed last, else what was entered, else nothing. */
export function openDraft(entry: EntryView, draft: string | undefined, initial: EntryValue | null): Draft {
  const typed = draft === undefined ? null : readDraft(entry, draft);
  const from = typed && !isBlank(typed) ? typed : initial && fitting(entry, initial);
  if (!from) return emptyDraft(entry);
  return "level" in from
    ? { level: { ...from.level, readings: atLeastTwo(entry, from.level.readings) } }
    : from;
}

/** A level is always known by two readings, so that there is room for two. */
function atLeastTwo(entry: EntryView, readings: StickReading[]): StickReading[] {
  return readings.length < 2 ? atLeastTwo(entry, [...readings, blankReading(entry)]) : readings;
}

/** Reads a kept draft; nothing where it can't be one of this entry. */
export function readDraft(entry: EntryView, text: string): Draft | null {
  try {
    return fitting(entry, JSON.parse(text));
  } catch {
    // What can't be read is no draft: it was never entered.
    return null;
  }
}

/** Whether nothing is typed yet. */
export function isBlank(draft: Draft): boolean {
  if ("reading" in draft) return draft.reading.value === "";
  if ("level" in draft) return draft.level.readings.every(isBlankReading);
  if ("coil" in draft) return draft.coil.shows === "";
  if ("cool_down" in draft) return draft.cool_down.value === "";
  if ("balance" in draft) return draft.balance.temperature === "" && !draft.balance.explained;
  if ("count" in draft) return Object.keys(draft.count.of).length === 0;
  if ("torque" in draft)
    return draft.torque.tool === null && draft.torque.stages.every((text) => text === "");
  if ("photo" in draft) return draft.photo === null;
  if ("choice" in draft) return draft.choice.class === null;
  if ("scan" in draft) return draft.scan.text === "";
  if ("note" in draft) return draft.note.text === "";
  return true;
}

/** The value of a draft; nothing while the core could not even read it. */
export function asValue(draft: Draft): EntryValue | null {
  if ("level" in draft) {
    const readings = draft.level.readings.filter((reading) => !isBlankReading(reading));
    return { level: { ...draft.level, readings } };
  }
  if ("torque" in draft) {
    const { tool, done: _, ...clicked } = draft.torque;
    return tool && { torque: { ...clicked, tool } };
  }
  if ("photo" in draft) return draft.photo && { photo: draft.photo };
  if ("choice" in draft)
    return draft.choice.class === null ? null : { choice: { class: draft.choice.class } };
  if ("sign_off" in draft) return null;
  return draft;
}

/** A draft as a row shows it; nothing where there is none, or it only repeats what is entered. */
export function draftText(
  entry: EntryView,
  draft: string | null,
  entered: EntryValue | null,
  items: ItemView[],
): string | null {
  const typed = draft === null ? null : readDraft(entry, draft);
  if (!typed || isBlank(typed) || "timer" in typed) return null;
  const value = asValue(typed);
  if (value && entered && JSON.stringify(value) === JSON.stringify(entered)) return null;
  return value ? valueText(entry, value, items) : say("entry-begun");
}

/** A value in short. */
export function valueText(entry: EntryView, value: EntryValue, items: ItemView[]): string {
  // A signature stands in a row of its own.
  if ("sign_off" in value) return "";
  if ("reading" in value) return `${value.reading.value} ${value.reading.unit}`;
  if ("level" in value) return value.level.readings.map(stickText).join(" · ");
  if ("coil" in value) return coilText(value.coil);
  if ("cool_down" in value) return `${value.cool_down.value} ${value.cool_down.unit}`;
  if ("balance" in value) return balanceText(value.balance);
  if ("count" in value) return countText(entry, value.count, items);
  if ("torque" in value) return `${value.torque.stages.join(" · ")} ${value.torque.unit}`;
  if ("photo" in value) return say("entry-photo-is-taken");
  if ("choice" in value) return optionText(entry, value.choice.class);
  if ("scan" in value) return value.scan.text;
  if ("timer" in value) return say("entry-timer-waited");
  return value.note.text;
}

/** How an entry stands. */
export type Standing = "empty" | "entered" | "not_yet" | "typed" | "running" | "over";

/** How an entry stands: what is typed goes before what is entered, as it is what a tap goes on with. */
export function standing(
  entry: EntryView,
  shown: EntryValue | null,
  typed: boolean,
  since: number,
): Standing {
  if (typed) return "typed";
  if (shown) {
    const last = JSON.stringify(shown) === JSON.stringify(entry.value);
    return last && entry.not_yet ? "not_yet" : "entered";
  }
  if (entry.ms_left === null) return "empty";
  return entry.ms_left > since ? "running" : "over";
}

/** What is asked for, in a few words beside the label: unit, limits, what a photo must show. */
export function askedText(entry: EntryView): string {
  const ask = entry.ask;
  const limits = entry.limits.map((limit) => limit.text ?? "");
  const parts = "reading" in ask && limits.length === 0 ? [entry.units.join(", ")] : limits;
  if ("photo" in ask) parts.push(ask.photo.of, ...(ask.photo.with_scale ? [say("entry-photo-scale")] : []));
  if ("scan" in ask) parts.push(say(`entry-scan-${ask.scan.of}`));
  return parts.join(" · ");
}

/** One stick reading: `58 °C 17 mm`. */
export function stickText(reading: StickReading): string {
  const stick =
    reading.stick === "no_trace"
      ? say("entry-no-trace")
      : `${reading.stick.trace.value} ${reading.stick.trace.unit}`;
  return `${reading.temperature} ${reading.temperature_unit} ${stick}`;
}

/** The number and the unit that a stage's wrench is set to by the sheet, as the sheet writes them: `9 N·m`. */
export function stageTarget(entry: EntryView, stage: number): { value: string; unit: string } | null {
  return targetOf(entry.limits[stage]);
}

/** The angle that each fastener is turned by afterwards, as the sheet writes it: `90 °`. */
export function angleTarget(entry: EntryView): { value: string; unit: string } | null {
  return targetOf(entry.limits.find((limit) => limit.id === "limit-angle"));
}

function targetOf(limit: EntryView["limits"][number] | undefined): { value: string; unit: string } | null {
  const target = limit?.args.target;
  if (!target || !("text" in target)) return null;
  const at = target.text.indexOf(" ");
  return at < 0 ? null : { value: target.text.slice(0, at), unit: target.text.slice(at + 1) };
}

/** The limits of the stages that click; what is turned by an angle afterwards stands beside them. */
export function stageLimits(entry: EntryView): EntryView["limits"] {
  return entry.limits.filter((limit) => limit.id !== "limit-angle");
}

/** How many fasteners are turned by an angle after the last stage. */
export function turnedBolts(entry: EntryView): number {
  const bolts = entry.limits.find((limit) => limit.id === "limit-angle")?.args.bolts;
  return bolts && "number" in bolts ? bolts.number : 0;
}

/** The name of an item. */
export function itemName(items: ItemView[], id: string): string {
  return items.find((item) => item.id === id)?.name ?? id;
}

function coilText(coil: ValueOf<"coil">): string {
  const shows = /\d/.test(coil.shows) ? `${coil.shows} ${coil.unit}` : coil.shows;
  return `${shows} (${coil.temperature} ${coil.temperature_unit})`;
}

function balanceText(balance: ValueOf<"balance">): string {
  return balance.explained?.reason ?? `${balance.temperature} ${balance.temperature_unit}`.trim();
}

function countText(entry: EntryView, count: ValueOf<"count">, items: ItemView[]): string {
  const expected = "count" in entry.ask ? entry.ask.count.of : {};
  const text = (id: string, pieces: number) => `${pieces}/${expected[id] ?? "?"}`;
  const counted = Object.entries(count.of);
  const [only] = counted;
  if (only && counted.length === 1) return text(...only);
  return counted.map(([id, pieces]) => `${itemName(items, id)} ${text(id, pieces)}`).join(", ");
}

function optionText(entry: EntryView, chosen: string): string {
  const options = "choice" in entry.ask ? entry.ask.choice.options : [];
  return options.find((option) => option.class === chosen)?.label ?? chosen;
}

function isBlankReading(reading: StickReading): boolean {
  return reading.temperature === "" && reading.stick !== "no_trace" && reading.stick.trace.value === "";
}

/** Takes what has the shape of this entry's drafts, and nothing else. */
function fitting(entry: EntryView, found: unknown): Draft | null {
  const kind = Object.keys(entry.ask)[0] ?? "";
  if (!isRecord(found) || !(kind in found) || kind === "sign_off") return null;
  const inner = found[kind];
  if (kind === "photo") return inner === null || has(inner, "hash") ? (found as Draft) : null;
  if (kind === "choice") return isRecord(inner) && "class" in inner ? (found as Draft) : null;
  if (kind === "count") return isRecord(inner) && isRecord(inner.of) ? (found as Draft) : null;
  if (kind === "level") {
    const readings = isRecord(inner) ? inner.readings : null;
    return Array.isArray(readings) && readings.every(isReading) ? (found as Draft) : null;
  }
  if (kind === "torque") {
    const stages = has(inner, "unit") && "tool" in inner ? inner.stages : null;
    return Array.isArray(stages) && stages.length === stageLimits(entry).length ? (found as Draft) : null;
  }
  if (kind === "reading") return has(inner, "value", "unit") ? (found as Draft) : null;
  if (kind === "coil")
    return has(inner, "shows", "unit", "temperature", "temperature_unit") ? (found as Draft) : null;
  if (kind === "cool_down") return has(inner, "value", "unit") && "by" in inner ? (found as Draft) : null;
  if (kind === "balance") return has(inner, "temperature", "temperature_unit") ? (found as Draft) : null;
  if (kind === "timer") return isRecord(inner) ? (found as Draft) : null;
  return has(inner, "text") ? (found as Draft) : null;
}

function isReading(found: unknown): found is StickReading {
  if (!has(found, "temperature", "temperature_unit")) return false;
  const stick = found.stick;
  return stick === "no_trace" || (isRecord(stick) && has(stick.trace, "value", "unit"));
}

function isRecord(found: unknown): found is Record<string, unknown> {
  return typeof found === "object" && found !== null && !Array.isArray(found);
}

/** Whether all of these are texts of it. */
function has(found: unknown, ...names: string[]): found is Record<string, unknown> {
  return isRecord(found) && names.every((name) => typeof found[name] === "string");
}
