// What the core says about a value while it is typed.
import { asTrouble } from "../core/call";
import type { EntryValue, Preview } from "../core/types";

/** Milliseconds of quiet before the core is asked. */
const QUIET_MS = 120;

/** The live preview of one entry. An answer for an older text never takes the place of a newer one. */
export class LivePreview {
  /** The last answer. */
  answer = $state.raw<Preview | null>(null);
  /** Why the core could not be asked. */
  failed = $state.raw<string | null>(null);

  #ask: (value: EntryValue) => Promise<Preview>;
  #latest = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(ask: (value: EntryValue) => Promise<Preview>) {
    this.#ask = ask;
  }

  /** Asks about a value after a moment of quiet. Nothing to ask about: nothing is said. */
  about(value: EntryValue | null): void {
    this.stop();
    if (value === null) {
      this.answer = null;
      this.failed = null;
      return;
    }
    const number = this.#latest;
    this.#timer = setTimeout(() => void this.#askFor(value, number), QUIET_MS);
  }

  /** Stops listening. */
  stop(): void {
    clearTimeout(this.#timer);
    this.#latest += 1;
  }

  async #askFor(value: EntryValue, number: number): Promise<void> {
    let answer: Preview | null = null;
    let failed: string | null = null;
    try {
      answer = await this.#ask(value);
    } catch (error) {
      failed = asTrouble(error).message;
    }
    if (number !== this.#latest) return;
    this.answer = answer;
    this.failed = failed;
  }
}
