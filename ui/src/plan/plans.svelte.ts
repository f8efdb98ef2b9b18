// The plan of the open job: a good order at once, the best one when the core has found it. It is asked for only while it is
// looked at.
import { bench } from "../bench.svelte";
import { call } from "../core/call";
import type { JobId, Planning } from "../core/types";

/** Milliseconds between two looks while a better order is searched for. */
const SEARCHING = 300;

/** Milliseconds after which what waits have run is worked out anew. */
const STALE = 60_000;

class Plans {
  #now = $state.raw<{ job: JobId; seq: number; planning: Planning } | null>(null);

  /** The plan of the job as it stands. Nothing until it is there, and where the job has gone on since. */
  of(job: JobId, seq: number): Planning | null {
    const now = this.#now;
    return now !== null && now.job === job && now.seq === seq ? now.planning : null;
  }

  /** Looks at the plan of a job until told to stop. */
  follow(job: JobId, seq: number): () => void {
    let on = true;
    let next: ReturnType<typeof setTimeout> | undefined;
    const look = async (stale: boolean) => {
      const planning = await bench.answer(() => call("plan", { job, stale }));
      if (!on) return;
      if (planning) this.#now = { job, seq, planning };
      // What failed is told by the bench, and asked for again when somebody looks again.
      if (planning?.searching) next = setTimeout(() => void look(false), SEARCHING);
      else if (planning) next = setTimeout(() => void look(true), STALE);
    };
    void look(false);
    return () => {
      on = false;
      clearTimeout(next);
    };
  }
}

export const plans = new Plans();
