// The job that is looked at, as the core last showed it, and what is asked of the core for it. It never changes a job by
// itself: it shows what the core answers.
import { addPhoto, call } from "../core/call";
import type { Actor, Command, EntryValue, JobPage, PersonId } from "../core/types";
import { pins } from "./pin.svelte";
import { remembered } from "./remembered.svelte";
import { shop } from "./shop.svelte";
import { answerOf, succeeds, troubles } from "./troubles.svelte";

class CurrentJob {
  page = $state.raw<JobPage | null>(null);
  /** When the page came, by this window's own clock, which nobody can set: what counts down counts from here. */
  pageAt = $state(0);
  /** Goes on once a second. */
  tick = $state(performance.now());
  /** A call is under way that changes the job. */
  busy = $state(false);
  /** The core has a clock that can be set ahead. */
  demoClock = $state(false);

  #again: { command: string; request: string } | null = null;

  /** Milliseconds since the page came. */
  get sincePage(): number {
    return Math.max(0, this.tick - this.pageAt);
  }

  /** Shows a job as the core told it. */
  show(page: JobPage): void {
    this.page = page;
    this.pageAt = performance.now();
    this.tick = this.pageAt;
    remembered.job = page.job;
  }

  /** Draws the job anew: what ages has aged. */
  async look(): Promise<void> {
    const job = this.page?.job;
    if (job && !this.busy) await succeeds(async () => this.show(await call("look", { job })));
  }

  /**
   * Asks for something. Answers whether it was entered; why not stands in the troubles. The same command tried again after a
   * failure keeps its id, so that it can't be written twice.
   */
  async ask(command: Command, as?: Actor): Promise<boolean> {
    const page = this.page;
    const who = as ?? shop.actor;
    if (!page || !who || this.busy) return false;
    this.busy = true;
    troubles.refused = null;
    let pinOf: PersonId | null = null;
    const words = JSON.stringify([page.head, who, command]);
    const request = this.#again?.command === words ? this.#again.request : crypto.randomUUID();
    this.#again = { command: words, request };
    let entered = false;
    await succeeds(async () => {
      const reply = await call("enter", { job: page.job, head: page.head, request, actor: who, command });
      this.#again = null;
      troubles.refused = reply.refused;
      entered = reply.refused === null;
      pinOf = reply.pin_of;
      this.show(reply.page);
    });
    this.busy = false;
    if (troubles.last?.kind === "stale") await this.look();
    if (pinOf !== null && (await pins.ask(pinOf))) return this.ask(command, as);
    return entered;
  }

  /** Takes in a photo file and answers the value to enter; nothing when it failed. */
  async takePhoto(file: Blob): Promise<EntryValue | null> {
    const job = this.page?.job;
    if (!job || this.busy) return null;
    this.busy = true;
    const value = await answerOf(() => addPhoto(job, file));
    this.busy = false;
    return value;
  }

  /** Lets minutes pass on the demo clock. */
  async letPass(minutes: number): Promise<void> {
    await succeeds(() => call("let_pass", { minutes }));
    await this.look();
  }
}

export const currentJob = new CurrentJob();
