// What went wrong and what was refused, until it is put away. Every screen tells it in its own place.
import { asTrouble } from "../core/call";
import type { Found, Refusal, Trouble } from "../core/types";

class Troubles {
  /** What went wrong last, until it is put away. */
  last = $state.raw<Trouble | null>(null);
  /** What the rules refused last, until the next command. */
  refused = $state.raw<Refusal | null>(null);
  /** What was found wrong with the store when it was opened, or since. */
  store = $state.raw<Found>({ said: [], go_on: false, troubled: false });
}

export const troubles = new Troubles();

/** What a call answers; null when it failed, and why is put where it is seen. */
export async function answerOf<T>(work: () => Promise<T>): Promise<T | null> {
  try {
    return await work();
  } catch (error) {
    troubles.last = asTrouble(error);
    return null;
  }
}

/** Whether a call succeeds; where it does not, why is put where it is seen. */
export async function succeeds(work: () => Promise<unknown>): Promise<boolean> {
  const done = async () => {
    await work();
    return true;
  };
  return (await answerOf(done)) ?? false;
}
