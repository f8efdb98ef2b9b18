import { beforeEach, expect, test, vi } from "vitest";
import { asked, askedFor, core, opens } from "./core/played";
import type { JobPage, Person, Refusal, Reply } from "./core/types";

vi.mock("./core/call", async (original) => (await import("./core/played")).played(original));

const { bench } = await import("./bench.svelte");
const { entryKey } = await import("./state/draftKey");
const { pins } = await import("./parts/pin.svelte");

const ode = { id: "o", role: "technician" as const };
const marl = { id: "m", role: "second_person" as const };
const people: Person[] = [
  { id: "m", name: "T. Marl", roles: ["second_person"], lead: false },
  { id: "o", name: "R. Ode", roles: ["technician"], lead: false },
];
const refusal: Refusal = { message: { id: "refused-needs", args: {}, text: "Not now." }, unmet: [] };

function page(seq: number, drafts: Record<string, string> = {}): JobPage {
  const steps = ["identify", "concern"].map((id, at) => ({
    id,
    number: at + 1,
    shown: "open",
    entries: [],
    begin: null,
    signs: [],
  }));
  return {
    job: "j1",
    head: { seq, hash: `h${seq}` },
    utc_offset_min: 0,
    drafts,
    view: { steps },
  } as unknown as JobPage;
}

function reply(seq: number, refused: Refusal | null = null, pin_of: string | null = null): Reply {
  return { refused, pin_of, page: page(seq) };
}

beforeEach(async () => {
  opens(people);
  core.jobs = [{ job: "j1", ended: false }];
  core.look = page(1);
  bench.trouble = null;
  bench.refused = null;
  await bench.open();
  asked.length = 0;
});

test("the first time a technician works and the open job is shown", () => {
  expect(bench.actor).toEqual(ode);
  expect([bench.screen, bench.page?.job]).toEqual(["job", "j1"]);
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
  await bench.open();
  expect([bench.step?.id, bench.pad, bench.actor?.id, bench.dark, bench.mm]).toEqual([
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
  await bench.open();
  expect(bench.actor).toEqual(ode);
});

test("what was kept and can't be read is forgotten, not shown as trouble", async () => {
  core.opened = { ...(core.opened as object), window: "{" };
  await bench.open();
  expect(bench.trouble).toBeNull();
});

test("a wish names the head that was shown, and the answer is what is shown next", async () => {
  core.enter = reply(2);
  expect(await bench.ask({ begin: { step: "identify" } })).toBe(true);
  expect(askedFor("enter")[0]).toMatchObject({ job: "j1", head: { seq: 1, hash: "h1" }, actor: ode });
  expect(bench.page?.head.seq).toBe(2);
});

test("a refused wish is no trouble and says why", async () => {
  core.enter = reply(1, refusal);
  expect(await bench.ask("finish")).toBe(false);
  expect([bench.refused, bench.trouble]).toEqual([refusal, null]);
});

test("a wish tried again after a failure keeps its id, another wish gets its own", async () => {
  core.enter = () => {
    throw { kind: "store", message: "The disk is full." };
  };
  expect(await bench.ask("finish")).toBe(false);
  expect(bench.trouble?.message).toBe("The disk is full.");
  core.enter = reply(2);
  await bench.ask("finish");
  await bench.ask("finish");
  const ids = askedFor("enter").map((takes) => takes.request);
  expect(ids[0]).toBe(ids[1]);
  expect(ids[2]).not.toBe(ids[1]);
});

test("two taps at once are one wish", async () => {
  core.enter = reply(2);
  const [first, second] = await Promise.all([bench.ask("finish"), bench.ask("finish")]);
  expect([first, second, askedFor("enter").length]).toEqual([true, false, 1]);
});

test("a job that has moved on is drawn anew", async () => {
  core.enter = () => {
    throw { kind: "stale", message: "The job has moved on." };
  };
  core.look = page(5);
  await bench.ask("finish");
  expect(bench.page?.head.seq).toBe(5);
});

test("a wish at a hold point asks the PIN and is made again once it was given", async () => {
  const answers = [reply(1, refusal, "m"), reply(2)];
  core.enter = () => answers.shift();
  const asking = bench.ask("finish");
  await vi.waitFor(() => expect(pins.asked?.person).toBe("m"));
  expect([bench.busy, bench.refused]).toEqual([false, refusal]);
  pins.end(true);
  expect(await asking).toBe(true);
  expect([bench.page?.head.seq, bench.refused]).toEqual([2, null]);
});

test("nobody gives the PIN: nothing is entered, and what is missing is said", async () => {
  core.enter = reply(1, refusal, "m");
  const asking = bench.ask("finish");
  await vi.waitFor(() => expect(pins.asked).not.toBeNull());
  pins.end(false);
  expect(await asking).toBe(false);
  expect([askedFor("enter").length, bench.refused]).toEqual([1, refusal]);
});

test("what the core asks PINs for is done again after each, and other troubles are told", async () => {
  let tries = 0;
  const work = async () => {
    tries += 1;
    if (tries === 1) throw { kind: "pin", message: "The PIN of R. Ode is needed.", pin_of: "o" };
    if (tries === 2) throw { kind: "pin", message: "The PIN of T. Marl is needed.", pin_of: "m" };
    return "done";
  };
  const asking = bench.withPin(work);
  await vi.waitFor(() => expect(pins.asked?.person).toBe("o"));
  pins.end(true);
  await vi.waitFor(() => expect(pins.asked?.person).toBe("m"));
  pins.end(true);
  expect([await asking, bench.trouble]).toEqual(["done", null]);
  const failing = async () => {
    throw { kind: "store", message: "The disk is full." };
  };
  expect(await bench.withPin(failing)).toBeNull();
  expect(bench.trouble?.message).toBe("The disk is full.");
});

test("a draft is kept at once and forgotten when its value is entered", async () => {
  core.enter = reply(2);
  const vin = entryKey("identify", "vin");
  bench.putDraft(vin, "DEM0");
  expect(askedFor("put_draft")).toEqual([{ job: "j1", key: vin, text: "DEM0" }]);
  const step = bench.page?.view.steps[0];
  if (!step) throw new Error("the page has steps");
  await bench.enter({ ...step, shown: "in_hand" }, "vin", { scan: { text: "DEM0" } });
  expect(bench.draft(vin)).toBeUndefined();
  await vi.waitFor(() => expect(askedFor("clear_draft")).toEqual([{ job: "j1", key: vin }]));
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
  bench.putDraft(vin, "DEM0");
  const opening = bench.openJob("j1");
  land();
  await opening;
  expect(bench.draft(vin)).toBe("DEM0");
});

test("a value for a step that nobody is in goes in by beginning it first", async () => {
  core.enter = reply(2);
  const step = bench.page?.view.steps[0];
  if (!step) throw new Error("the page has steps");
  await bench.enter(step, "vin", { scan: { text: "DEM0" } });
  expect(askedFor("enter").map((takes) => Object.keys(takes.wish as object)[0])).toEqual(["begin", "enter"]);
});

test("a photo that can't be taken in is told", async () => {
  core.add_photo = () => Promise.reject({ kind: "photo", message: "This is no photo." });
  expect(await bench.takePhoto(new Blob())).toBeNull();
  expect(bench.trouble?.message).toBe("This is no photo.");
  expect(bench.busy).toBe(false);
});
