// The customer's answer.
import type { Answer, Means } from "../../core/types";
import { say } from "../../words/say";
import AuthorizationPad from "../pads/AuthorizationPad.svelte";
import { type EntryOf, kind } from "./kind";
import { hasTexts } from "./shape";

/** An answer of which something can be missing yet. */
export interface AuthorizationDraft {
  answer: Answer | null;
  amount: string;
  currency: string;
  given_by: string;
  means: Means | null;
  given_at: string;
}

export const ANSWERS: Answer[] = ["agreed", "declined", "pending"];
export const MEANS: Means[] = ["in_person", "telephone", "written"];

export const authorization = kind<"authorization", AuthorizationDraft>({
  pad: AuthorizationPad,
  empty: (entry) => ({
    answer: null,
    amount: "",
    currency: entry.units[0] ?? "",
    given_by: "",
    means: null,
    given_at: "",
  }),
  fits: (found): found is AuthorizationDraft =>
    hasTexts(found, "amount", "currency", "given_by") && "answer" in found,
  isBlank: ({ answer, amount, given_by, means, given_at }) =>
    answer === null && means === null && [amount, given_by, given_at].every((text) => text === ""),
  value: ({ answer, given_at, ...typed }) =>
    answer === null
      ? { missing: "entry-missing-answer" }
      : { value: { answer, ...typed, ...(given_at !== "" && { given_at }) } },
  text: ({ answer, amount, currency }) =>
    answer === "agreed" ? `${amount} ${currency}` : say(`entry-answer-${answer}`),
  open: (typed) => ({ ...typed, means: typed.means ?? null, given_at: typed.given_at ?? "" }),
  isToldBySentence: () => true,
});

/** The answer chosen; a yes with no amount yet takes what the estimate comes to. */
export function answered(
  typed: AuthorizationDraft,
  answer: Answer,
  entry: Pick<EntryOf<"authorization">, "estimate">,
): AuthorizationDraft {
  const sum = answer === "agreed" && typed.amount === "" ? entry.estimate?.sum : null;
  return { ...typed, answer, ...(sum && { amount: sum.value, currency: sum.unit }) };
}
