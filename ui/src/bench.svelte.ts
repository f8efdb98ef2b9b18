// What the window holds: where it is, the job as the core last showed it, who works. Every screen reads from here and
// asks for everything here. It never changes a job by itself: it shows what the core answers.
import { SvelteMap } from "svelte/reactivity";
import { addPhoto, asTrouble, call } from "./core/call";
import type {
  Actor,
  EntryValue,
  Found,
  JobId,
  JobPage,
  Kit,
  PersonId,
  PinHolder,
  Refusal,
  Request,
  Signature,
  StepView,
  Trouble,
  TypedTool,
} from "./core/types";
import { pins } from "./parts/pin.svelte";
import { stepToShow } from "./sheet/focus";
import { whoWorks } from "./sheet/people";
import { type DraftKey, entryKey, isOfStep } from "./state/draftKey";
import { DraftWrites } from "./state/draftWrites";
import {
  ASSUMED_MM,
  type NewJob,
  NO_KIT,
  type Overlay,
  type Pad,
  readWhere,
  type Screen,
  type SheetAt,
  type Where,
} from "./where";

export type { NewJob, Overlay, Screen, SheetAt } from "./where";

/** Screens that show no job. */
const JOBLESS: Screen[] = ["kit", "new_job", "sheet"];

class Bench {
  /** The window has found out where it was. */
  ready = $state(false);
  screen = $state<Screen>("bay");
  page = $state.raw<JobPage | null>(null);
  /** When the page came, by this window's own clock, which nobody can set: what counts down counts from here. */
  pageAt = $state(0);
  /** Goes on once a second. */
  tick = $state(performance.now());
  kit = $state.raw<Kit>(NO_KIT);
  /** Who has a PIN. */
  pins = $state.raw<PinHolder[]>([]);
  actor = $state.raw<Actor | null>(null);
  dark = $state(false);
  mm = $state(ASSUMED_MM);
  demoClock = $state(false);
  newJob = $state.raw<NewJob | null>(null);
  /** The large thread is in the order of the plan. */
  planOrder = $state(false);
  /** How many people are planned for; null: as many as the checklist has. */
  planPeople = $state<number | null>(null);
  sheet = $state.raw<SheetAt | null>(null);
  tool = $state.raw<TypedTool | null>(null);
  /** A call is under way that changes the job. */
  busy = $state(false);
  /** What went wrong last, until it is put away. */
  trouble = $state.raw<Trouble | null>(null);
  /** What the rules refused last, until the next wish. */
  refused = $state.raw<Refusal | null>(null);
  /** What was found wrong with the store when it was opened. */
  storeTroubles = $state.raw<Found>({ said: [], go_on: false, troubled: false });

  #steps: Record<JobId, string> = {};
  #overlay = $state<Overlay | null>(null);
  #pad = $state.raw<Pad | null>(null);
  #lookedAt = $state<string | null>(null);
  #job: JobId | null = null;
  #again: { wish: string; request: string } | null = null;
  /** Drafts as they are on the screen, ahead of the disk by the moment of writing. */
  #drafts = new SvelteMap<string, string>();
  #writes = new DraftWrites(
    (job, key, text) =>
      text === null ? call("clear_draft", { job, key }) : call("put_draft", { job, key, text }),
    (error) => {
      this.trouble = asTrouble(error);
    },
  );

  /** The step that is looked at. */
  get step(): StepView | null {
    const view = this.page?.view;
    return view ? (view.steps.find((step) => step.id === this.#lookedAt) ?? stepToShow(view, null)) : null;
  }

  /** What is laid over the step sheet. */
  get overlay(): Overlay | null {
    return this.#overlay;
  }

  set overlay(overlay: Overlay | null) {
    this.#overlay = overlay;
    this.remember();
  }

  /** The entry of the step looked at whose pad is open. */
  get pad(): string | null {
    return this.#pad !== null && this.#pad.step === this.step?.id ? this.#pad.entry : null;
  }

  set pad(entry: string | null) {
    const step = this.step?.id;
    this.#pad = entry !== null && step !== undefined ? { step, entry } : null;
    this.remember();
  }

  /** Milliseconds since the page came. */
  get sincePage(): number {
    return Math.max(0, this.tick - this.pageAt);
  }

  /** Opens: finds out where the window was and goes there. */
  async open(): Promise<void> {
    await this.#try(async () => {
      const opened = await call("opened", {});
      this.kit = opened.kit;
      this.pins = opened.pins;
      this.demoClock = opened.demo_clock;
      this.storeTroubles = opened.troubles;
      const where = readWhere(opened.window);
      this.actor = whoWorks(opened.kit.people, where?.actor ?? null);
      this.dark = where?.dark ?? window.matchMedia("(prefers-color-scheme: dark)").matches;
      this.mm = where?.mm ?? ASSUMED_MM;
      this.#steps = where?.steps ?? {};
      this.newJob = where?.newJob ?? null;
      this.planOrder = where?.planOrder ?? false;
      this.planPeople = where?.planPeople ?? null;
      this.sheet = where?.sheet ?? null;
      this.tool = where?.tool ?? null;
      const jobs = await call("jobs", {});
      const last =
        jobs.find((job) => job.job === where?.job) ?? (where ? undefined : jobs.find((job) => !job.ended));
      if (last) await this.openJob(last.job);
      if (where && (last || JOBLESS.includes(where.screen))) this.screen = where.screen;
      if (where && last) {
        this.#overlay = where.overlay ?? null;
        this.#pad = where.pad ?? null;
      }
    });
    this.ready = true;
  }

  /** Opens a job where it was left. */
  async openJob(job: JobId): Promise<void> {
    await this.#try(async () => {
      // What is read must not be older than what was typed last.
      await this.#writes.written(job);
      this.#show(await call("look", { job }), true);
      this.#lookedAt = this.#steps[job] ?? null;
      this.go("job");
    });
  }

  /** Goes to a screen. */
  go(screen: Screen): void {
    this.screen = screen;
    this.#overlay = null;
    this.refused = null;
    this.remember();
  }

  /** Looks at a step, whether or not it can be begun. */
  lookAt(step: string): void {
    this.#lookedAt = step;
    this.refused = null;
    if (this.page) this.#steps[this.page.job] = step;
    this.screen = "job";
    this.#overlay = null;
    if (this.#pad?.step !== step) this.#pad = null;
    this.remember();
  }

  /** Draws the job anew: what ages has aged. */
  async look(): Promise<void> {
    const job = this.page?.job;
    if (job && !this.busy) await this.#try(async () => this.#show(await call("look", { job }), false));
  }

  /** Says who works now. */
  work({ id, role }: Actor): void {
    this.actor = { id, role };
    this.remember();
  }

  /** Keeps what is filled in for a new job; nothing once it is started. */
  keepNewJob(job: NewJob | null): void {
    this.newJob = job;
    this.remember();
  }

  /** Looks at a spec sheet, or at another place of it. */
  lookAtSheet(sheet: SheetAt): void {
    this.sheet = sheet;
    this.screen = "sheet";
    this.remember();
  }

  /** Does what the core may ask PINs for, and does it again each time that one is given. */
  async withPin<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      return await work();
    } catch (error) {
      const trouble = asTrouble(error);
      if (trouble.pin_of) return (await pins.ask(trouble.pin_of)) ? this.withPin(work) : null;
      this.trouble = trouble;
      return null;
    }
  }

  /** Changes the shop's list as who works now, and shows what it is then; nothing when it stayed as it was. */
  async changeKit(work: (who: PersonId | null) => Promise<Kit>): Promise<Kit | null> {
    const kit = await this.withPin(() => work(this.actor?.id ?? null));
    if (!kit) return null;
    this.kit = kit;
    this.actor = whoWorks(kit.people, this.actor);
    this.remember();
    return kit;
  }

  /**
   * Asks for something. Answers whether it was entered; why not stands in `refused` or `trouble`. The same wish tried
   * again after a failure keeps its id, so that it can't be written twice.
   */
  async ask(wish: Request, as?: Actor): Promise<boolean> {
    const page = this.page;
    const who = as ?? this.actor;
    if (!page || !who || this.busy) return false;
    this.busy = true;
    this.refused = null;
    let pinOf: PersonId | null = null;
    const words = JSON.stringify([page.head, who, wish]);
    const request = this.#again?.wish === words ? this.#again.request : crypto.randomUUID();
    this.#again = { wish: words, request };
    let entered = false;
    await this.#try(async () => {
      const reply = await call("enter", { job: page.job, head: page.head, request, actor: who, wish });
      this.#again = null;
      this.refused = reply.refused;
      entered = reply.refused === null;
      pinOf = reply.pin_of;
      this.#show(reply.page, false);
    });
    this.busy = false;
    if (this.trouble?.kind === "stale") await this.look();
    if (pinOf !== null && (await pins.ask(pinOf))) return this.ask(wish, as);
    return entered;
  }

  /** Enters a value at a step; goes into the step first where nobody is in it yet. */
  async enter(step: StepView, entry: string, value: EntryValue): Promise<boolean> {
    if (step.shown !== "in_hand" && !(await this.begin(step))) return false;
    const entered = await this.ask({ enter: { step: step.id, entry, value } });
    if (entered) this.clearDraft(entryKey(step.id, entry));
    return entered;
  }

  /** Goes into a step. */
  async begin(step: StepView): Promise<boolean> {
    this.lookAt(step.id);
    return this.ask({ begin: { step: step.id } });
  }

  /** Is done with a step, and looks at the next. */
  async done(step: StepView, signatures: Signature[]): Promise<boolean> {
    const wish: Request =
      step.shown === "in_hand"
        ? { done: { step: step.id, signatures } }
        : { work: { step: step.id, entries: {}, signatures, later: false } };
    return this.#onward(step, await this.ask(wish));
  }

  /** Enters a step that was worked before, all in one go. */
  async enteredLater(
    step: StepView,
    entries: Record<string, EntryValue>,
    signatures: Signature[],
  ): Promise<boolean> {
    return this.#onward(step, await this.ask({ work: { step: step.id, entries, signatures, later: true } }));
  }

  /** Puts a struck step right on paper. */
  async putRight(
    step: StepView,
    entries: Record<string, EntryValue>,
    signatures: Signature[],
    reason: string,
  ): Promise<boolean> {
    return this.#onward(step, await this.ask({ rerecord: { step: step.id, entries, signatures, reason } }));
  }

  /** Takes in a photo file and answers the value to enter; nothing when it failed. */
  async takePhoto(file: Blob): Promise<EntryValue | null> {
    const job = this.page?.job;
    let value: EntryValue | null = null;
    if (!job || this.busy) return null;
    this.busy = true;
    await this.#try(async () => {
      value = await addPhoto(job, file);
    });
    this.busy = false;
    return value;
  }

  /** What was typed under a key and is not done. */
  draft(key: DraftKey): string | undefined {
    return this.#drafts.get(key);
  }

  /** Keeps what is typed. It is on disk a moment later, and survives a restart. */
  putDraft(key: DraftKey, text: string): void {
    const job = this.page?.job;
    if (!job || this.#drafts.get(key) === text) return;
    this.#drafts.set(key, text);
    this.#writes.put(job, key, text);
  }

  /** Forgets what was typed. */
  clearDraft(key: DraftKey): void {
    this.#forget(key);
  }

  /** Forgets all that was typed and collected to enter a step. */
  clearStep(step: string): void {
    for (const key of [...this.#drafts.keys()]) if (isOfStep(key, step)) this.#forget(key);
  }

  /** Lets minutes pass on the demo clock. */
  async letPass(minutes: number): Promise<void> {
    await this.#try(() => call("let_pass", { minutes }));
    await this.look();
  }

  /** Tries again to open or read the store. */
  async openAgain(): Promise<void> {
    this.trouble = null;
    if (await this.#try(() => call("open_again", {}))) await this.open();
  }

  /** Keeps where the window is. */
  remember(): void {
    if (!this.ready) return;
    const where: Where = {
      screen: this.screen,
      job: this.#job,
      steps: this.#steps,
      actor: this.actor,
      dark: this.dark,
      mm: this.mm,
      newJob: this.newJob,
      planOrder: this.planOrder,
      planPeople: this.planPeople,
      overlay: this.#overlay,
      pad: this.#pad,
      sheet: this.sheet,
      tool: this.tool,
    };
    void this.#try(() => call("put_setting", { key: "window", text: JSON.stringify(where) }));
  }

  /** Does a call and answers what it answers; null when it failed, and why is put where it is seen. */
  async answer<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      return await work();
    } catch (error) {
      this.trouble = asTrouble(error);
      return null;
    }
  }

  /** Does a call and puts what went wrong where it is seen. Answers whether nothing did. */
  async #try(work: () => Promise<unknown>): Promise<boolean> {
    const done = async () => {
      await work();
      return true;
    };
    return (await this.answer(done)) ?? false;
  }

  #forget(key: string): void {
    const job = this.page?.job;
    if (job && this.#drafts.delete(key)) this.#writes.put(job, key, null);
  }

  #onward(step: StepView, entered: boolean): boolean {
    const view = this.page?.view;
    if (!entered || !view) return false;
    for (const entry of step.entries) this.clearDraft(entryKey(step.id, entry.id));
    const next = stepToShow(view, step.id);
    if (next) this.lookAt(next.id);
    return true;
  }

  #show(page: JobPage, drafts: boolean): void {
    this.page = page;
    this.pageAt = performance.now();
    this.tick = this.pageAt;
    this.#job = page.job;
    if (!drafts) return;
    this.#drafts.clear();
    for (const [key, text] of Object.entries(page.drafts)) this.#drafts.set(key, text);
    for (const [key, text] of this.#writes.pending(page.job)) {
      if (text === null) this.#drafts.delete(key);
      else this.#drafts.set(key, text);
    }
  }
}

export const bench = new Bench();
