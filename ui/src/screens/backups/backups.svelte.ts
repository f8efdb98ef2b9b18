// The shop's backups, and the ways back to one. What goes wrong here is told in place: the store itself may be what is
// wrong, and the screen tells that already.
import { asTrouble, call } from "../../core/call";
import type { BackedUpPage, BackupLine, Backups, RestorePage, SalvagedPage } from "../../core/types";
import { currentJob } from "../../state/currentJob.svelte";
import { remembered } from "../../state/remembered.svelte";
import { answerOf, troubles } from "../../state/troubles.svelte";

/** What is typed of the plan. */
export interface TypedPlan {
  folder: string;
  hours: string;
  keep: string;
}

/** What can be laid over a screen. */
export type Laid = "plan" | "restore" | "save";

/** What is going on. */
type Doing = "keep" | "back_up" | "list" | "look" | "restore" | "save";

/** What is offered where nothing was typed yet: once a day, and two weeks of them. */
const USUAL = { hours: "24", keep: "14" };

/** A number as it was typed; what is none comes to the core as 0, which says what may be typed. */
function whole(text: string): number {
  return /^\d{1,6}$/.test(text.trim()) ? Number(text) : 0;
}

class WaysBack {
  /** How it stands; null: not known. */
  now = $state.raw<Backups | null>(null);
  /** The store can't be read. */
  unread = $state(false);
  laid = $state<Laid | null>(null);
  doing = $state<Doing | null>(null);
  /** Why the last try came to nothing. */
  wrong = $state<string | null>(null);
  /** The backup that was made just now. */
  made = $state.raw<BackedUpPage | null>(null);
  plan = $state.raw<TypedPlan>({ folder: "", ...USUAL });
  /** The folder that is typed: with the backups, or for what is saved. */
  folder = $state("");
  /** The backups in the folder; null: not looked yet. */
  found = $state.raw<BackupLine[] | null>(null);
  /** The backup that may be restored, and what that would come to. */
  ahead = $state.raw<{ backup: string; page: RestorePage } | null>(null);
  /** What was restored. The page starts anew after it was read. */
  restored = $state.raw<RestorePage | null>(null);
  saved = $state.raw<SalvagedPage | null>(null);

  /** Asks how it stands. */
  async look(): Promise<void> {
    try {
      this.now = await call("backups", {});
      this.unread = false;
    } catch {
      // Every screen says why; a backup can be restored all the same.
      this.now = null;
      this.unread = true;
    }
  }

  /** Lays something over the screen. */
  open(laid: Laid): void {
    const plan = this.now?.plan;
    this.close();
    this.laid = laid;
    this.plan = plan
      ? { folder: plan.folder, hours: String(plan.every_hours), keep: String(plan.keep) }
      : { folder: "", ...USUAL };
    this.folder = laid === "restore" ? (plan?.folder ?? "") : "";
    if (this.folder !== "") void this.list();
  }

  /** Puts it away. */
  close(): void {
    this.laid = null;
    this.wrong = null;
    this.made = null;
    this.found = null;
    this.ahead = null;
    this.saved = null;
  }

  /** Keeps the plan as it is typed. */
  async keep(): Promise<void> {
    const { folder, hours, keep } = this.plan;
    await this.#put({ folder, every_hours: whole(hours), keep: whole(keep) });
  }

  /** Ends the plan. Backups that were made stay. */
  async end(): Promise<void> {
    await this.#put(null);
  }

  /** Makes a backup now. */
  async backUp(): Promise<void> {
    this.made = null;
    const made = await this.#do("back_up", () => call("back_up", {}));
    if (made) this.made = made;
    await this.look();
    await this.#troubles();
  }

  /** Looks which backups are in the typed folder. */
  async list(): Promise<void> {
    const { folder } = this;
    this.found = null;
    this.found = await this.#do("list", () => call("backups_in", { folder }));
  }

  /** Asks what restoring a backup would come to. */
  async ask(backup: string): Promise<void> {
    const page = await this.#do("look", () => call("look_at_backup", { backup }));
    if (page) this.ahead = { backup, page };
  }

  /** Goes back from the question to the list. */
  notNow(): void {
    this.ahead = null;
    this.wrong = null;
  }

  /** Restores the backup that was asked about. */
  async restore(): Promise<void> {
    const backup = this.ahead?.backup;
    if (backup === undefined) return;
    const restored = await this.#do("restore", () => call("restore", { backup }));
    if (!restored) return;
    // Nothing of what was shown before belongs to the restored store, and nothing of it may be kept there.
    remembered.ready = false;
    currentJob.page = null;
    this.close();
    this.restored = restored;
  }

  /** Starts the page anew, from what the restored store has. */
  startAnew(): void {
    window.location.reload();
  }

  /** Saves what can be read of a damaged store into the typed folder. */
  async save(): Promise<void> {
    const into = this.folder;
    this.saved = await this.#do("save", () => call("salvage", { into }));
    await this.#troubles();
  }

  async #put(plan: Backups["plan"]): Promise<void> {
    const now = await this.#do("keep", () => call("put_backup_plan", { plan }));
    if (!now) return;
    this.now = now;
    this.close();
    await this.#troubles();
  }

  /** A backup that failed is told on every screen; what was opened anew is verified anew. */
  async #troubles(): Promise<void> {
    const found = await answerOf(() => call("troubles", {}));
    if (found) troubles.store = found;
  }

  /** Does one thing at a time. Answers nothing when it failed, and keeps why. */
  async #do<T>(doing: Doing, work: () => Promise<T>): Promise<T | null> {
    if (this.doing !== null) return null;
    this.doing = doing;
    this.wrong = null;
    try {
      return await work();
    } catch (error) {
      this.wrong = asTrouble(error).message;
      return null;
    } finally {
      this.doing = null;
    }
  }
}

export const waysBack = new WaysBack();
