// The proofs that this window asked for. They go on in the core when no screen looks; what is kept here is since when.
import { SvelteMap } from "svelte/reactivity";
import { asTrouble, call } from "../../core/call";
import type { Proving } from "../../core/types";

/** A checklist by its hash, and the spec sheet for whose vehicle it is proved by its id; null: for every vehicle. */
export interface Asked {
  checklist: string;
  sheet: string | null;
}

function keyOf({ checklist, sheet }: Asked): string {
  return `${checklist} ${sheet}`;
}

/** Milliseconds between two looks at a proof. */
const EVERY = 500;

class Proofs {
  #now = new SvelteMap<string, Proving>();
  #since = new Map<string, number>();

  /** How far a proof was when it was last looked at. */
  of(asked: Asked): Proving | null {
    return this.#now.get(keyOf(asked)) ?? null;
  }

  /** When it was begun, as far as this window knows, in milliseconds. */
  since(asked: Asked): number {
    return this.#since.get(keyOf(asked)) ?? performance.now();
  }

  /** Looks at a proof, and begins it where there is none, until it has ended. Answers how to stop looking. */
  follow(asked: Asked): () => void {
    const key = keyOf(asked);
    let on = true;
    let next: ReturnType<typeof setTimeout> | undefined;
    if (!this.#since.has(key)) this.#since.set(key, performance.now());
    const look = async () => {
      const now = await ask(asked);
      this.#now.set(key, now);
      if (now.proved || now.failed) this.#since.delete(key);
      else if (on) next = setTimeout(() => void look(), EVERY);
    };
    void look();
    return () => {
      on = false;
      clearTimeout(next);
    };
  }
}

/** A proof that can't be asked about has failed as far as one can see. */
async function ask(asked: Asked): Promise<Proving> {
  try {
    return await call("prove", { ...asked });
  } catch (error) {
    return { proved: false, doing: "", states: 0, failed: asTrouble(error) };
  }
}

export const proofs = new Proofs();
