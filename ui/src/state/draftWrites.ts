// Drafts on their way to the disk. Of each only one write is under way, and after it the newest text is written: what is
// on disk in the end is what was typed last, however long a write takes.
import type { JobId } from "../core/types";

/** Writes a draft, or takes it away where the text is null. */
export type Write = (job: JobId, key: string, text: string | null) => Promise<unknown>;

interface Writing {
  job: JobId;
  key: string;
  /** The newest text. */
  text: string | null;
  /** It is still to be written. */
  waits: boolean;
  /** Ends when nothing is left to write. */
  ended: Promise<void>;
}

/** The writes of drafts, in order for each key. */
export class DraftWrites {
  #write: Write;
  #failed: (error: unknown) => void;
  #under = new Map<string, Writing>();

  constructor(write: Write, failed: (error: unknown) => void) {
    this.#write = write;
    this.#failed = failed;
  }

  /** Writes a text, or takes it away where it is null, after what is under way for the same key. */
  put(job: JobId, key: string, text: string | null): void {
    const id = JSON.stringify([job, key]);
    const under = this.#under.get(id);
    if (under) {
      under.text = text;
      under.waits = true;
      return;
    }
    const writing: Writing = { job, key, text, waits: true, ended: Promise.resolve() };
    this.#under.set(id, writing);
    writing.ended = this.#run(id, writing);
  }

  /** Waits until everything of a job is written. */
  async written(job: JobId): Promise<void> {
    await Promise.all(this.#of(job).map((writing) => writing.ended));
  }

  /** The newest texts of a job that may not be on disk yet; null: taken away. */
  pending(job: JobId): [key: string, text: string | null][] {
    return this.#of(job).map((writing) => [writing.key, writing.text]);
  }

  async #run(id: string, writing: Writing): Promise<void> {
    while (writing.waits) {
      writing.waits = false;
      try {
        await this.#write(writing.job, writing.key, writing.text);
      } catch (error) {
        this.#failed(error);
      }
    }
    this.#under.delete(id);
  }

  #of(job: JobId): Writing[] {
    return [...this.#under.values()].filter((writing) => writing.job === job);
  }
}
