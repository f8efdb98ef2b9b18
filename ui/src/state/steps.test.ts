import { beforeEach, expect, test, vi } from "vitest";
import { askedFor, core } from "../core/played";
import { openPlayed, reply } from "./playedJob";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { currentJob } = await import("./currentJob.svelte");
const { entryKey } = await import("./draftKey");
const { drafts } = await import("./drafts.svelte");
const { enterAtStep } = await import("./steps");

beforeEach(openPlayed);

test("a draft is kept at once and forgotten when its value is entered", async () => {
  core.enter = reply(2);
  const vin = entryKey("identify", "vin");
  drafts.put(vin, "DEM0");
  expect(askedFor("put_draft")).toEqual([{ job: "j1", key: vin, text: "DEM0" }]);
  const step = currentJob.page?.view.steps[0];
  if (!step) throw new Error("the page has steps");
  await enterAtStep({ ...step, shown: "in_progress" }, "vin", { scan: { text: "DEM0" } });
  expect(drafts.get(vin)).toBeUndefined();
  await vi.waitFor(() => expect(askedFor("clear_draft")).toEqual([{ job: "j1", key: vin }]));
});

test("a value for a step that nobody is in goes in by beginning it first", async () => {
  core.enter = reply(2);
  const step = currentJob.page?.view.steps[0];
  if (!step) throw new Error("the page has steps");
  await enterAtStep(step, "vin", { scan: { text: "DEM0" } });
  expect(askedFor("enter").map((takes) => Object.keys(takes.command as object)[0])).toEqual([
    "begin",
    "enter",
  ]);
});
