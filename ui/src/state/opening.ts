// Opening the window where it was, a job where it was left, and the store again after it could not be read.
import { call } from "../core/call";
import type { JobId } from "../core/types";
import { currentJob } from "./currentJob.svelte";
import { drafts } from "./drafts.svelte";
import { nav } from "./nav.svelte";
import { whoWorks } from "./people";
import { remembered } from "./remembered.svelte";
import { shop } from "./shop.svelte";
import { succeeds, troubles } from "./troubles.svelte";
import { readWhere, type Screen } from "./where";

/** Screens that show no job. */
const JOBLESS: Screen[] = ["setup", "new_job", "sheet"];

/** Opens the window: finds out where it was and goes there. */
export async function openWindow(): Promise<void> {
  await succeeds(async () => {
    const opened = await call("opened", {});
    shop.setup = opened.setup;
    shop.pins = opened.pins;
    currentJob.demoClock = opened.demo_clock;
    troubles.store = opened.troubles;
    const where = readWhere(opened.window);
    remembered.restore({
      ...where,
      actor: whoWorks(opened.setup.people, where?.actor ?? null),
      dark: where?.dark ?? window.matchMedia("(prefers-color-scheme: dark)").matches,
    });
    const jobs = await call("jobs", {});
    const last =
      jobs.find((job) => job.job === where?.job) ?? (where ? undefined : jobs.find((job) => !job.ended));
    if (last) await openJob(last.job);
    if (where?.screen && (last || JOBLESS.includes(where.screen))) remembered.screen = where.screen;
    if (where && last) {
      remembered.overlay = where.overlay ?? null;
      remembered.pad = where.pad ?? null;
    }
  });
  remembered.ready = true;
}

/** Opens a job where it was left. */
export async function openJob(job: JobId): Promise<void> {
  await succeeds(async () => {
    await drafts.written(job);
    const page = await call("look", { job });
    currentJob.show(page);
    drafts.show(page.job, page.drafts);
    nav.go("job");
  });
}

/** Tries again to open or read the store. */
export async function openAgain(): Promise<void> {
  troubles.last = null;
  if (await succeeds(() => call("open_again", {}))) await openWindow();
}
