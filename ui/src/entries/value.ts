// Values of entries: as they are kept while they are typed, as they are entered, and in short for a row. What differs
// from kind to kind stands with the kind.
import type { EntryValue, EntryView, Hash, ItemView } from "../core/types";
import { say } from "../words/say";
import { kindOf, type TypedEntry } from "./kinds";
import type { KindId, ValueOf } from "./kinds/kind";
import { isRecord } from "./kinds/shape";

/** What is typed and not entered, under the name of its kind: a value in which something can be missing yet. */
export type Draft = { readonly [Id in KindId]?: unknown };

/** A draft as its kind knows it. */
export function typedOf(entry: TypedEntry, draft: Draft): unknown {
  return draft[kindOf(entry).id];
}

/** What is typed at an entry, as a draft. */
export function draftOf(entry: TypedEntry, typed: unknown): Draft {
  return { [kindOf(entry).id]: typed };
}

/** Where typing begins. */
export function emptyDraft(entry: TypedEntry): Draft {
  return draftOf(entry, kindOf(entry).kind.empty(entry));
}

/** What typing goes on from: what was typed last, else what was entered, else nothing. */
export function openDraft(entry: TypedEntry, draft: string | undefined, initial: EntryValue | null): Draft {
  const { kind } = kindOf(entry);
  const typed = draft === undefined ? null : readDraft(entry, draft);
  const from = typed && !isBlank(entry, typed) ? typed : fitting(entry, initial);
  if (!from) return emptyDraft(entry);
  return kind.open ? draftOf(entry, kind.open(typedOf(entry, from), entry)) : from;
}

/** Reads a kept draft; nothing where it can't be one of this entry. */
export function readDraft(entry: TypedEntry, text: string): Draft | null {
  try {
    return fitting(entry, JSON.parse(text));
  } catch {
    // What can't be read is no draft: it was never entered.
    return null;
  }
}

/** Whether nothing is typed yet. */
export function isBlank(entry: TypedEntry, draft: Draft): boolean {
  return kindOf(entry).kind.isBlank(typedOf(entry, draft));
}

/** The value of a draft, or in words what is missing while there is none that the core could read. */
export function asValue(
  entry: TypedEntry,
  draft: Draft,
): { value: EntryValue; missing: null } | { value: null; missing: string } {
  const { id, kind } = kindOf(entry);
  const found = kind.value(typedOf(entry, draft));
  if ("missing" in found) return { value: null, missing: say(found.missing) };
  return { value: { [id]: found.value } as EntryValue, missing: null };
}

/** A draft as a row shows it; nothing where there is none, or it only repeats what is entered. */
export function draftText(
  entry: TypedEntry,
  draft: string | null,
  entered: EntryValue | null,
  items: ItemView[],
): string | null {
  const typed = draft === null ? null : readDraft(entry, draft);
  if (!typed || isBlank(entry, typed)) return null;
  const { value } = asValue(entry, typed);
  if (value && entered && JSON.stringify(value) === JSON.stringify(entered)) return null;
  return value ? valueText(entry, value, items) : say("entry-begun");
}

/** A value in short. */
export function valueText(entry: TypedEntry, value: EntryValue, items: ItemView[]): string {
  return kindOf(entry).kind.text(partOf(entry, value), entry, items);
}

/** The picture that is shown for a value, where its kind has one. */
export function pictureOf(entry: TypedEntry, value: EntryValue): Hash | null {
  return kindOf(entry).kind.picture?.(partOf(entry, value)) ?? null;
}

/** Whether the core's sentence tells a value by itself. */
export function isToldBySentence(entry: TypedEntry, value: EntryValue): boolean {
  return kindOf(entry).kind.isToldBySentence?.(partOf(entry, value)) ?? false;
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
export function askedText(entry: TypedEntry): string {
  const limits = entry.limits.map((limit) => limit.text ?? "");
  return [...limits, ...(kindOf(entry).kind.asked?.(entry) ?? [])].join(" · ");
}

/** The part of a value that belongs to the entry's kind. */
function partOf(entry: TypedEntry, value: EntryValue): ValueOf<KindId> {
  return (value as Record<KindId, ValueOf<KindId>>)[kindOf(entry).id];
}

/** Takes what has the shape of this entry's drafts, and nothing else. */
function fitting(entry: TypedEntry, found: unknown): Draft | null {
  const { id, kind } = kindOf(entry);
  return isRecord(found) && id in found && kind.fits(found[id], entry) ? found : null;
}
