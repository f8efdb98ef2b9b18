// What is being waited for: timers of steps in progress, and what is known only for a while. The core gives the milliseconds
// at the time of the page; here they are counted down.
import type { JobView } from "../core/types";

/** Something that runs out. */
export interface Wait {
  /** Names it from page to page. */
  key: string;
  kind: "timer" | "fresh";
  /** The step whose timer it is. */
  step: string | null;
  /** The step's number; nothing for what is known. */
  number: number | null;
  name: string;
  /** Milliseconds left; 0 when it has run out. */
  msLeft: number;
}

/** Everything that runs out, timers first, then the sooner first; `since` milliseconds after the page came. */
export function waits(view: JobView, since: number): Wait[] {
  const left = (ms: number) => Math.max(0, ms - since);
  const timers = view.steps
    .filter((step) => step.shown === "in_progress")
    .flatMap((step) =>
      step.entries
        .filter((entry) => entry.ms_left !== null)
        .map((entry) => ({
          key: `timer/${step.id}/${entry.id}`,
          kind: "timer" as const,
          step: step.id,
          number: step.number,
          name: entry.label,
          msLeft: left(entry.ms_left ?? 0),
        })),
    );
  const fresh = view.gates
    .filter((gate) => gate.known !== null && gate.ms_fresh !== null)
    .map((gate) => ({
      key: `fresh/${gate.id}`,
      kind: "fresh" as const,
      step: null,
      number: null,
      name: gate.name,
      msLeft: left(gate.ms_fresh ?? 0),
    }));
  const sooner = (a: Wait, b: Wait) => a.msLeft - b.msLeft;
  return [...timers.sort(sooner), ...fresh.sort(sooner)];
}

/** The timers that have run out since they were last seen running. */
export function runOut(wereRunning: ReadonlySet<string>, now: Wait[]): Wait[] {
  return now.filter((wait) => wait.kind === "timer" && wait.msLeft === 0 && wereRunning.has(wait.key));
}

/** Whole minutes that are surely left. */
export function minutesLeft(ms: number): number {
  return Math.floor(Math.max(0, ms) / 60_000);
}
