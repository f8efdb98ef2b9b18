// What the core says, in sentences.
import type { Refusal } from "../core/types";

/** The sentences of a refusal, one by one. */
export function sentences(refusal: Refusal): string[] {
  return [refusal.message, ...refusal.unmet].map((message) => message.text ?? message.id);
}
