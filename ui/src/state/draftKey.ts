// The keys of drafts, made here and nowhere else. A key is the JSON of its parts, so that no two drafts can have the same
// one, whatever stands in the ids.

/** What a reason is asked for. */
export type ReasonFor = "void" | "skip" | "explain_missed" | "stop" | "observe";

type Parts =
  | ["entry" | "collected", step: string, entry: string]
  | ["mode", step: string]
  | ["reason", about: ReasonFor, step: string | null]
  | ["turned_up"];

declare const made: unique symbol;

/** The key of a draft: unique within its job. */
export type DraftKey = string & { readonly [made]: true };

function key(parts: Parts): DraftKey {
  return JSON.stringify(parts) as DraftKey;
}

/** What is typed at an entry and not entered, or the signature that will be given with Done. */
export function entryKey(step: string, entry: string): DraftKey {
  return key(["entry", step, entry]);
}

/** A value that is collected, to be entered together with the others of its step. */
export function collectedKey(step: string, entry: string): DraftKey {
  return key(["collected", step, entry]);
}

/** How a step is being entered. */
export function modeKey(step: string): DraftKey {
  return key(["mode", step]);
}

/** A reason that is being given; of a step where it is about one. */
export function reasonKey(about: ReasonFor, step: string | null): DraftKey {
  return key(["reason", about, step]);
}

/** What turned up and is being entered. */
export function turnedUpKey(): DraftKey {
  return key(["turned_up"]);
}

/** Whether a draft is part of entering a step. A reason is about a step and no part of entering it. */
export function isOfStep(key: string, step: string): boolean {
  try {
    const parts: unknown = JSON.parse(key);
    return Array.isArray(parts) && parts[0] !== "reason" && parts[1] === step;
  } catch {
    // A key that nobody here made belongs to no step.
    return false;
  }
}
