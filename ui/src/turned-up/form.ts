// A form for what turned up, as it is typed; kept as one draft of the job.
import type { Ask, EntryValue, EntryView, EstimateLines, EstimateView, Urgency } from "../core/types";
import type { AuthorizationDraft } from "../entries/kinds/authorization";

/** What is being entered. */
export type Asks =
  | "found"
  | "ask"
  | "piece"
  | "answer"
  | "back"
  | "gone"
  | "dealt_with"
  | "without"
  | "take_back";

export interface Form {
  asks: Asks | null;
  /** The number of the event that it is about; null: something new. */
  about: number | null;
  text: string;
  /** Where it was found or comes from. */
  at: string;
  urgency: Urgency | null;
  photos: EntryValue[];
  count: number;
  lines: EstimateLines | null;
  answer: AuthorizationDraft | null;
}

export const EMPTY: Form = {
  asks: null,
  about: null,
  text: "",
  at: "",
  urgency: null,
  photos: [],
  count: 1,
  lines: null,
  answer: null,
};

/** A form that was kept; an empty one where there is none or it can't be read. */
export function readForm(kept: string | undefined): Form {
  if (kept === undefined) return EMPTY;
  try {
    const form: unknown = JSON.parse(kept);
    return typeof form === "object" && form !== null ? { ...EMPTY, ...form } : EMPTY;
  } catch {
    return EMPTY;
  }
}

/** What a pad of an entry needs, for a value that belongs to no entry of the checklist. */
export function asEntry<A extends Ask>(
  label: string,
  ask: A,
  units: string[],
  estimate: EstimateView | null,
) {
  const entry: Omit<EntryView, "ask"> = {
    id: "",
    label,
    optional: false,
    limits: [],
    coils: [],
    units,
    temperature_units: [],
    torque: null,
    estimate,
    overload: [],
    bolts: null,
    decision: null,
    value: null,
    class: null,
    ends: [],
    not_yet: false,
    said: [],
    ms_left: null,
  };
  return { ...entry, ask };
}
