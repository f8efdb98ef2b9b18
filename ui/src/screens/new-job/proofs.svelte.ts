// The proofs that this window asked for. They go on in the core when no screen looks; what is kept here is since when.
import { SvelteMap } from "svelte/reactivity";
import { asTrouble, call } from "../../core/call";
import type { Proving } from "../../core/types";

/** Milliseconds between two looks at a proof. */
const EVERY = 500;

class Proofs {
  #now = new SvelteMap<string, Proving>();
  #since = new Map<string, number>();

  /** How far the proof of a checklist was when it was last looked at. */
  of(checklist: string): Proving | null {
    return this.#now.get(checklist) ?? null;
  }

  /** When it was begun, as far as this window knows, in milliseconds. */
  since(checklist: string): number {
    return this.#since.get(checklist) ?? performance.now();
  }

  /** Looks at a proof, and begins it where there is none, until it has ended. Answers how to stop looking. */
  follow(checklist: string): () => void {
    let on = true;
    let next: ReturnType<typeof setTimeout> | undefined;
    if (!this.#since.has(checklist)) this.#since.set(checklist, performance.now());
    const look = async () => {
      const now = await ask(checklist);
      this.#now.set(checklist, now);
      if (now.proved || now.failed) this.#since.delete(checklist);
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
async function ask(checklist: string): Promise<Proving> {
  try {
    return await call("prove", { checklist });
  } catch (error) {
    return { proved: false, doing: "", states: 0, failed: asTrouble(error) };
  }
}

export const proofs = new Proofs();
