import { beforeEach, expect, test, vi } from "vitest";
import { core } from "../core/played";
import { marl, ode, openPlayed, page } from "./playedJob";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { currentJob } = await import("./currentJob.svelte");
const { entryKey } = await import("./draftKey");
const { drafts } = await import("./drafts.svelte");
const { nav } = await import("./nav.svelte");
const { openJob, openWindow } = await import("./opening");
const { remembered } = await import("./remembered.svelte");
const { shop } = await import("./shop.svelte");
const { troubles } = await import("./troubles.svelte");

beforeEach(openPlayed);

test("the first time a technician works and the open job is shown", () => {
  expect(shop.actor).toEqual(ode);
  expect([nav.screen, currentJob.page?.job]).toEqual(["job", "j1"]);
});

test("the window comes back to its screen, step, pad and person", async () => {
  const where = {
    screen: "job",
    job: "j1",
    steps: { j1: "concern" },
    actor: marl,
    dark: true,
    mm: 7,
    pad: { step: "concern", entry: "more" },
  };
  core.opened = { ...(core.opened as object), window: JSON.stringify(where) };
  await openWindow();
  expect([nav.step?.id, nav.pad, shop.actor?.id, remembered.dark, remembered.mm]).toEqual([
    "concern",
    "more",
    "m",
    true,
    7,
  ]);
});

test("who works no more in the shop does not come back", async () => {
  const where = { screen: "bay", job: null, steps: {}, actor: { id: "gone", role: "technician" } };
  core.opened = { ...(core.opened as object), window: JSON.stringify(where) };
  await openWindow();
  expect(shop.actor).toEqual(ode);
});

test("what was kept and can't be read is forgotten, not shown as trouble", async () => {
  core.opened = { ...(core.opened as object), window: "{" };
  await openWindow();
  expect(troubles.last).toBeNull();
});

test("a job opened while its drafts are written shows what was typed last", async () => {
  const vin = entryKey("identify", "vin");
  let land = () => {};
  let disk: Record<string, string> = {};
  core.look = () => page(1, disk);
  core.put_draft = ({ text }: { text: string }) =>
    new Promise<null>((resolve) => {
      land = () => {
        disk = { [vin]: text };
        resolve(null);
      };
    });
  drafts.put(vin, "DEM0");
  const opening = openJob("j1");
  land();
  await opening;
  expect(drafts.get(vin)).toBe("DEM0");
});
