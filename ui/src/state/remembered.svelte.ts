// What the window finds again when it is opened the next time. It is on disk a moment after it changes.
import { call } from "../core/call";
import type { Actor, JobId, TypedShopValue, TypedTool } from "../core/types";
import { NewestWrites } from "./newestWrites";
import { succeeds } from "./troubles.svelte";
import {
  ASSUMED_MM,
  type NewJob,
  NO_REMOTE,
  type Overlay,
  type Pad,
  type RemoteKeys,
  type Screen,
  type SheetAt,
  type Where,
} from "./where";

class Remembered implements Where {
  /** The window has found out where it was. Nothing is kept before. */
  ready = $state(false);
  screen = $state<Screen>("bay");
  job = $state<JobId | null>(null);
  steps = $state.raw<Record<JobId, string>>({});
  actor = $state.raw<Actor | null>(null);
  dark = $state(false);
  mm = $state(ASSUMED_MM);
  leftHanded = $state(false);
  newJob = $state.raw<NewJob | null>(null);
  planOrder = $state(false);
  planPeople = $state<number | null>(null);
  overlay = $state<Overlay | null>(null);
  pad = $state.raw<Pad | null>(null);
  sheet = $state.raw<SheetAt | null>(null);
  tool = $state.raw<TypedTool | null>(null);
  shopValue = $state.raw<TypedShopValue | null>(null);
  remote = $state.raw<RemoteKeys>(NO_REMOTE);
  sound = $state(true);

  #writes = new NewestWrites<string>((key, text) => succeeds(() => call("put_setting", { key, text })));

  /** Takes what was kept. Where the window was is gone to by whoever opens it: the job may be there no more. */
  restore(kept: Partial<Where>): void {
    this.steps = kept.steps ?? {};
    this.actor = kept.actor ?? null;
    this.dark = kept.dark ?? false;
    this.mm = kept.mm ?? ASSUMED_MM;
    this.leftHanded = kept.leftHanded ?? false;
    this.newJob = kept.newJob ?? null;
    this.planOrder = kept.planOrder ?? false;
    this.planPeople = kept.planPeople ?? null;
    this.sheet = kept.sheet ?? null;
    this.tool = kept.tool ?? null;
    this.shopValue = kept.shopValue ?? null;
    this.remote = kept.remote ?? NO_REMOTE;
    this.sound = kept.sound ?? true;
  }

  /** Changes some of it and keeps all of it. */
  put(changed: Partial<Where>): void {
    Object.assign(this, changed);
    if (this.ready) this.#writes.put("window", JSON.stringify(this.#whole()));
  }

  #whole(): Where {
    const { screen, job, steps, actor, dark, mm, newJob, planOrder, planPeople, overlay, pad } = this;
    const { sheet, tool, shopValue, remote, sound, leftHanded } = this;
    const at = { screen, job, steps, actor, dark, mm, newJob, planOrder, planPeople, overlay, pad };
    return { ...at, sheet, tool, shopValue, remote, sound, leftHanded };
  }
}

export const remembered = new Remembered();
