// The plans of the open job, for one person and for two: a good order at once, the best one when the core has found it. They
// are asked for only while they are looked at.
import { SvelteMap } from "svelte/reactivity";
import { call } from "../core/call";
import type { JobId, Planning } from "../core/types";
import { answerOf } from "../state/troubles.svelte";

/** Milliseconds between two looks while a better order is searched for. */
const SEARCHING = 300;

/** Milliseconds after which what waits have run is worked out anew. */
const STALE = 60_000;

/** A plan is worked out anew at most in this part of the time, so that a long search does not keep the tablet busy. */
const RESTS = 10;

class Plans {
  /** By job and people, with the event that it was made on. */
  #found = new SvelteMap<string, { seq: number; planning: Planning }>();

  /** The plan of the job as it stands. Nothing until it is there, and where the job has gone on since. */
  of(job: JobId, seq: number, people: number): Planning | null {
    const found = this.#found.get(`${job}/${people}`);
    return found?.seq === seq ? found.planning : null;
  }

  /** Looks at the plan of a job until told to stop; only at once where a good order is enough. */
  follow(job: JobId, seq: number, people: number, best: boolean): () => void {
    let on = true;
    let next: ReturnType<typeof setTimeout> | undefined;
    const look = async (stale: boolean, since: number) => {
      const planning = await answerOf(() => call("plan", { job, people, best, stale }));
      if (!on) return;
      if (planning) this.#found.set(`${job}/${people}`, { seq, planning });
      // What failed is told by the screen, and asked for again when somebody looks again.
      if (!planning || !best) return;
      const rest = Math.max(STALE, RESTS * (performance.now() - since));
      next =
        planning.searching === null
          ? setTimeout(() => void look(true, performance.now()), rest)
          : setTimeout(() => void look(false, since), SEARCHING);
    };
    void look(false, performance.now());
    return () => {
      on = false;
      clearTimeout(next);
    };
  }
}

export const plans = new Plans();
