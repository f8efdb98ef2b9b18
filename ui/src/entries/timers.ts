// Which waits have just come to their end.
import type { JobView } from "../core/types";

/** A wait that runs: its key, and the milliseconds that were left when the page came. */
export interface Wait {
  key: string;
  msLeft: number;
}

/** The waits of the steps in hand. */
export function waits(view: JobView): Wait[] {
  return view.steps
    .filter((step) => step.shown === "in_hand")
    .flatMap((step) =>
      step.entries.flatMap((entry) =>
        entry.ms_left === null ? [] : [{ key: `${step.id}/${entry.id}`, msLeft: entry.ms_left }],
      ),
    );
}

/** Notices the moment when a wait ends: a wait has to be seen running before its end counts. */
export class EndOfWaits {
  #running = new Set<string>();

  /** Whether one of them ended since the last look; `since` is in milliseconds since the page came. */
  ended(now: Wait[], since: number): boolean {
    const over = now.filter((wait) => wait.msLeft <= since && this.#running.has(wait.key));
    this.#running = new Set(now.filter((wait) => wait.msLeft > since).map((wait) => wait.key));
    return over.length > 0;
  }
}
