// What the vehicle line draws and says, read from the view. Which condition draws which part stands in the checklist; a
// value outside this vocabulary draws nothing and is only said.
import type { JobView } from "../core/types";

/** The values that can be drawn, by the part that `draws` names. */
const VOCABULARY = {
  lift: ["floor", "raised", "on_locks"],
  engine: ["off", "running"],
  exhaust: ["on", "off", "tied"],
  fluid: ["filled", "drained", "first_fill"],
  pan: ["on", "off", "hung"],
  key: ["in_car", "secured"],
  bystanders: ["unchecked", "clear"],
  torch: ["off", "lit", "fire_watch"],
} as const;

type Part = keyof typeof VOCABULARY;

/** What is drawn: a value for each part, nothing where no condition draws it or its value has no drawing. */
export type Drawn = { [P in Part]: (typeof VOCABULARY)[P][number] | null } & {
  /** Somebody is under the vehicle. */
  under: boolean;
};

/** A cell of words beside the drawing. */
export interface Said {
  id: string;
  name: string;
  value: string;
}

/** A cell that says what is known for a while. */
export interface Ageing extends Said {
  /** Milliseconds for which it stays good, at the time of the page. */
  msFresh: number;
}

function value<P extends Part>(view: JobView, part: P): Drawn[P] {
  const values: readonly string[] = VOCABULARY[part];
  const found = view.conditions.find((condition) => condition.draws === part)?.value;
  return found !== undefined && values.includes(found) ? (found as Drawn[P]) : null;
}

/** What the vehicle line draws. */
export function drawn(view: JobView): Drawn {
  return {
    lift: value(view, "lift"),
    engine: value(view, "engine"),
    exhaust: value(view, "exhaust"),
    fluid: value(view, "fluid"),
    pan: value(view, "pan"),
    key: value(view, "key"),
    bystanders: value(view, "bystanders"),
    torch: value(view, "torch"),
    under: whoIsUnder(view).length > 0,
  };
}

/** The names of those who are in a step under the vehicle, each once. */
export function whoIsUnder(view: JobView): string[] {
  const under = view.steps.filter((step) => step.shown === "in_progress" && step.zone === "under");
  const names = new Map(under.map((step) => [step.begun?.who, step.begun?.name]));
  return [...names.values()].filter((name) => name !== undefined);
}

/**
 * The words beside the drawing, at most `room`: every condition that is drawn, and who is under the vehicle, which keeps
 * its place whatever else there is. `under` is what that cell is called.
 */
export function said(view: JobView, under: string, room: number): Said[] {
  const conditions = view.conditions
    .filter((condition) => condition.draws !== null)
    .map(({ id, name, says }) => ({ id, name, value: says }));
  const people = whoIsUnder(view);
  const below = people.length > 0 ? [{ id: "under", name: under, value: people.join(", ") }] : [];
  return [...conditions.slice(0, room - below.length), ...below];
}

/** What is known and ages, that which runs out first. */
export function ageing(view: JobView): Ageing | null {
  const known = view.gates.flatMap(({ id, name, known, last, ms_fresh }) =>
    known !== null && last !== null && ms_fresh !== null
      ? [{ id, name, value: last.text ?? last.id, msFresh: ms_fresh }]
      : [],
  );
  return known.sort((a, b) => a.msFresh - b.msFresh)[0] ?? null;
}
