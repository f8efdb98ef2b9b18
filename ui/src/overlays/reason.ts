// A reason: short words that were tapped, and what was written beside them.
import type { ReasonFor } from "../state/draftKey";
import { say } from "../words/say";

/** The messages of the short words that can be tapped. */
const WORDS: Record<ReasonFor, string[]> = {
  stop: ["sheet-stop-debris", "sheet-stop-declined", "sheet-stop-part", "sheet-stop-unsafe"],
  void: ["sheet-void-typing", "sheet-void-step", "sheet-void-reading", "sheet-void-vehicle"],
  skip: ["sheet-skip-vehicle", "sheet-skip-somebody", "sheet-skip-declined"],
  explain_missed: ["sheet-missed-findings", "sheet-missed-elsewhere", "sheet-missed-accessible"],
  observe: [
    "screens-observe-found",
    "screens-observe-somebody",
    "screens-observe-broke",
    "screens-observe-entry",
  ],
};

/** The short words that can be tapped for a reason. */
export function wordsFor(about: ReasonFor): string[] {
  return WORDS[about].map((id) => say(id));
}

/** A reason that is being given. */
export interface Draft {
  /** The short words that stand, in the order of tapping. */
  words: string[];
  text: string;
}

/** A draft that was kept; an empty one where there is none or it can't be read. */
export function readDraft(kept: string | undefined): Draft {
  if (kept === undefined) return { words: [], text: "" };
  try {
    const value = JSON.parse(kept) as Partial<Draft>;
    const words = Array.isArray(value.words) ? value.words.filter((word) => typeof word === "string") : [];
    return { words, text: typeof value.text === "string" ? value.text : "" };
  } catch {
    return { words: [], text: "" };
  }
}

/** The draft with a short word tapped: it stands, or no longer. */
export function tapped(draft: Draft, word: string): Draft {
  const stands = draft.words.includes(word);
  return { ...draft, words: stands ? draft.words.filter((one) => one !== word) : [...draft.words, word] };
}

/** The reason in words; empty where nothing is given. */
export function reasonOf(draft: Draft): string {
  return [...draft.words, draft.text.trim()].filter((part) => part !== "").join(". ");
}
