// What is filled in for a new job, against what is offered. It only fills gaps; what is wrong is said by the core.
import type { ChecklistOffer, SheetOffer } from "../../core/types";
import type { NewJob } from "../../state/where";

/** Nothing filled in. */
export const EMPTY: NewJob = {
  checklist: null,
  sheet: null,
  repairOrder: "",
  label: "",
  conditions: {},
  tried: null,
};

/** The checklist and the spec sheet that stand: those chosen, or the first that are offered. */
export function chosen(
  job: NewJob,
  offers: ChecklistOffer[],
): { checklist: ChecklistOffer; sheet: SheetOffer | null } | null {
  const checklist = offers.find((offer) => offer.hash === job.checklist) ?? offers[0];
  if (!checklist) return null;
  const sheet = checklist.sheets.find((offer) => offer.id === job.sheet) ?? checklist.sheets[0] ?? null;
  return { checklist, sheet };
}

/** Another revision of a checklist, which is proved. */
export function provedBefore(checklist: ChecklistOffer, offers: ChecklistOffer[]): ChecklistOffer | null {
  const is = (offer: ChecklistOffer) =>
    offer.id === checklist.id && offer.hash !== checklist.hash && offer.proved;
  return offers.find(is) ?? null;
}

/** The answer that stands to a question: the one given, or the first. */
export function answered(job: NewJob, question: ChecklistOffer["questions"][number]): string | undefined {
  const given = job.conditions[question.condition];
  return question.answers.some((answer) => answer.value === given) ? given : question.answers[0]?.value;
}

/** Every question's answer that stands, by condition. */
export function conditions(job: NewJob, checklist: ChecklistOffer): Record<string, string> {
  return Object.fromEntries(
    checklist.questions.flatMap((question) => {
      const answer = answered(job, question);
      return answer === undefined ? [] : [[question.condition, answer]];
    }),
  );
}

/** The id under which `what` is tried: the one it was tried with before, else a new one. */
export function tryAs(job: NewJob, what: string, fresh: () => string): { what: string; request: string } {
  return job.tried?.what === what ? job.tried : { what, request: fresh() };
}
