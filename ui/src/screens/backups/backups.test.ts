import { beforeEach, expect, test, vi } from "vitest";
import { askedFor, core, opens } from "../../core/played";
import type { Backups, RestorePage } from "../../core/types";

vi.mock("../../core/call", async (original) => (await import("../../core/played")).played(original));

const { currentJob } = await import("../../state/currentJob.svelte");
const { openWindow } = await import("../../state/opening");
const { remembered } = await import("../../state/remembered.svelte");
const { troubles } = await import("../../state/troubles.svelte");
const { waysBack } = await import("./backups.svelte");
const { factsOf } = await import("./backups");

const none: Backups = { plan: null, made: null, age: null, due: false, failed: null };
const plan = { folder: "/media/stick/backups", every_hours: 24, keep: 14 };
const planned: Backups = { ...none, plan, due: true };
const made: Backups = {
  ...planned,
  due: false,
  age: "0 minutes ago",
  made: { path: "/media/stick/backups/2026-03-02T080000Z-7", wall_ms: 1, events: 7, lacks: [] },
};
const quiet = { said: [], go_on: false, troubled: false };
const page: RestorePage = {
  backup: { age: "3 days ago", events: 354, photos: 12, lacks: 0, another: false },
  lacks: { entries: 2, jobs: [{ called: 'RO 1042 "invented van"', restored: 40, lacking: 2 }] },
  photos_missing: [],
  moved_to: null,
};

beforeEach(async () => {
  opens([]);
  core.backups = none;
  core.troubles = quiet;
  troubles.last = null;
  await openWindow();
  waysBack.close();
  waysBack.restored = null;
  await waysBack.look();
});

test("a plan begins with once a day and two weeks, and is sent as numbers", async () => {
  waysBack.open("plan");
  expect(waysBack.plan).toEqual({ folder: "", hours: "24", keep: "14" });
  waysBack.plan = { folder: "/media/stick/backups", hours: " 12", keep: "3 " };
  core.put_backup_plan = planned;
  await waysBack.keep();
  expect(askedFor("put_backup_plan")).toEqual([
    { plan: { folder: "/media/stick/backups", every_hours: 12, keep: 3 } },
  ]);
  expect([waysBack.now, waysBack.laid]).toEqual([planned, null]);
});

test("what is no number is left to the core to refuse, and its sentence stays beside what is typed", async () => {
  waysBack.open("plan");
  waysBack.plan = { ...waysBack.plan, hours: "daily", keep: "-1" };
  core.put_backup_plan = new Error("A backup is made every 1 to 720 hours, and 1 to 1000 are kept.");
  await waysBack.keep();
  expect(askedFor("put_backup_plan")).toEqual([{ plan: { folder: "", every_hours: 0, keep: 0 } }]);
  expect(waysBack.wrong).toContain("every 1 to 720 hours");
  expect([waysBack.laid, waysBack.plan.hours, troubles.last]).toEqual(["plan", "daily", null]);
});

test("a plan is ended by keeping none", async () => {
  core.backups = planned;
  await waysBack.look();
  waysBack.open("plan");
  core.put_backup_plan = none;
  await waysBack.end();
  expect(askedFor("put_backup_plan")).toEqual([{ plan: null }]);
  expect(waysBack.now).toEqual(none);
});

test("while a backup is made none is begun beside it, and what came of it is said", async () => {
  core.backups = planned;
  await waysBack.look();
  let finish: (value: unknown) => void = () => undefined;
  core.back_up = () =>
    new Promise((done) => {
      finish = done;
    });
  const first = waysBack.backUp();
  expect(waysBack.doing).toBe("back_up");
  await waysBack.backUp();
  expect(askedFor("back_up")).toHaveLength(1);
  core.backups = made;
  finish({ backups: made, photos: 4, copied: 1, removed: 0 });
  await first;
  expect(waysBack.made).toMatchObject({ photos: 4, copied: 1 });
  expect([waysBack.doing, waysBack.now]).toEqual([null, made]);
});

test("a backup that fails is told, and told of on every screen", async () => {
  const failed = { ...planned, failed: "The last backup failed. The folder for backups is not there." };
  core.back_up = new Error("The folder for backups is not there.");
  core.backups = failed;
  core.troubles = { ...quiet, said: [failed.failed] };
  await waysBack.backUp();
  expect(waysBack.wrong).toBe("The folder for backups is not there.");
  expect(waysBack.now?.failed).toBe(failed.failed);
  expect(troubles.store.said).toEqual([failed.failed]);
});

test("the backups of the plan's folder are listed at once, those of another when it is typed", async () => {
  core.backups = planned;
  core.backups_in = [];
  await waysBack.look();
  waysBack.open("restore");
  await vi.waitFor(() => expect(waysBack.found).toEqual([]));
  waysBack.folder = "/media/other";
  await waysBack.list();
  expect(askedFor("backups_in").map(({ folder }) => folder)).toEqual([plan.folder, "/media/other"]);
});

test("nothing is restored before it was asked what it comes to", async () => {
  waysBack.open("restore");
  await waysBack.restore();
  expect(askedFor("restore")).toEqual([]);
  core.look_at_backup = new Error("The backup /b/1 does not hold. Choose another one.");
  await waysBack.ask("/b/1");
  expect([waysBack.ahead, waysBack.wrong]).toEqual([
    null,
    "The backup /b/1 does not hold. Choose another one.",
  ]);
  core.look_at_backup = page;
  await waysBack.ask("/b/2");
  expect(waysBack.ahead).toEqual({ backup: "/b/2", page });
  waysBack.notNow();
  await waysBack.restore();
  expect(askedFor("restore")).toEqual([]);
});

test("after restoring nothing of the old store is shown or kept, and the page starts anew", async () => {
  core.look_at_backup = page;
  core.restore = { ...page, moved_to: "/bay.before-2026-03-02T080000Z" };
  waysBack.open("restore");
  await waysBack.ask("/b/2");
  const kept = askedFor("put_setting").length;
  await waysBack.restore();
  remembered.put({});
  expect(askedFor("put_setting")).toHaveLength(kept);
  expect([currentJob.page, remembered.ready, waysBack.laid]).toEqual([null, false, null]);
  expect(waysBack.restored?.moved_to).toBe("/bay.before-2026-03-02T080000Z");
  const reload = vi.fn();
  vi.stubGlobal("window", { ...window, location: { reload } });
  waysBack.startAnew();
  expect(reload).toHaveBeenCalledOnce();
});

test("where restoring fails the question stays with the reason, and the window goes on", async () => {
  core.look_at_backup = page;
  core.restore = new Error("The disk is full: restoring a backup was refused and nothing was written.");
  waysBack.open("restore");
  await waysBack.ask("/b/2");
  await waysBack.restore();
  expect([waysBack.restored, waysBack.ahead?.backup, remembered.ready]).toEqual([null, "/b/2", true]);
  expect(waysBack.wrong).toContain("The disk is full");
});

test("what was saved of a damaged store is said, and what is still wrong with it asked anew", async () => {
  const still = { said: ["The newest entries are lost."], go_on: true, troubled: true };
  core.troubles = still;
  const saved = { into: "/saved", events: 113, subjects: 2, documents: 5, photos: 0, not_saved: [] };
  core.salvage = saved;
  waysBack.open("save");
  waysBack.folder = "/saved";
  await waysBack.save();
  expect(askedFor("salvage")).toEqual([{ into: "/saved" }]);
  expect([waysBack.saved, troubles.store]).toEqual([saved, still]);
});

test("a store that can't be read has no plan to show, and a backup can be looked for all the same", async () => {
  core.backups = new Error("The store has lost its database. Restore a backup.");
  await waysBack.look();
  expect([waysBack.now, waysBack.unread, waysBack.wrong, troubles.last]).toEqual([null, true, null, null]);
  waysBack.open("restore");
  expect([waysBack.laid, waysBack.folder, askedFor("backups_in")]).toEqual(["restore", "", []]);
});

test("a backup that lacks something says so beside what it has", () => {
  expect(factsOf(page.backup)).toBe("354 entries, photos: 12.");
  expect(factsOf({ ...page.backup, events: 1, lacks: 2 })).toBe(
    "1 entry, photos: 12. Missing from it: 2 photos or texts that were damaged or lost on their tablet.",
  );
});
