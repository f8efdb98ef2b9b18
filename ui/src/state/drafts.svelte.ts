// What is typed in the job that is looked at and not done: on the screen at once, on disk a moment later.
import { SvelteMap } from "svelte/reactivity";
import { call } from "../core/call";
import type { JobId } from "../core/types";
import { type DraftKey, isOfStep } from "./draftKey";
import { NewestWrites } from "./newestWrites";
import { succeeds } from "./troubles.svelte";

class Drafts {
  #job: JobId | null = null;
  #texts = new SvelteMap<string, string>();
  /** By job; null takes a draft away. */
  #writes = new Map<JobId, NewestWrites<string | null>>();

  /** Waits until a job's drafts are on disk, so that what is read then is what was typed last. */
  async written(job: JobId): Promise<void> {
    await this.#writes.get(job)?.written();
  }

  /** Shows a job's drafts as they were read; what is newer and still to be written goes before. */
  show(job: JobId, read: Record<string, string>): void {
    this.#job = job;
    this.#texts.clear();
    for (const [key, text] of Object.entries(read)) this.#texts.set(key, text);
    for (const [key, text] of this.#writes.get(job)?.pending() ?? []) {
      if (text === null) this.#texts.delete(key);
      else this.#texts.set(key, text);
    }
  }

  /** What was typed under a key and is not done. */
  get(key: DraftKey): string | undefined {
    return this.#texts.get(key);
  }

  /** Keeps what is typed. */
  put(key: DraftKey, text: string): void {
    if (this.#job === null || this.#texts.get(key) === text) return;
    this.#texts.set(key, text);
    this.#writesOf(this.#job).put(key, text);
  }

  /** Forgets what was typed. */
  clear(key: DraftKey): void {
    this.#forget(key);
  }

  /** Forgets all that was typed and collected to enter a step. */
  clearStep(step: string): void {
    for (const key of [...this.#texts.keys()]) if (isOfStep(key, step)) this.#forget(key);
  }

  #forget(key: string): void {
    if (this.#job !== null && this.#texts.delete(key)) this.#writesOf(this.#job).put(key, null);
  }

  #writesOf(job: JobId): NewestWrites<string | null> {
    const known = this.#writes.get(job);
    if (known) return known;
    const writes = new NewestWrites<string | null>((key, text) =>
      succeeds(() =>
        text === null ? call("clear_draft", { job, key }) : call("put_draft", { job, key, text }),
      ),
    );
    this.#writes.set(job, writes);
    return writes;
  }
}

export const drafts = new Drafts();
