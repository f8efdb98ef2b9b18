import { beforeEach, expect, test, vi } from "vitest";
import { askedFor, core } from "../core/played";
import { ode, openPlayed, page, refusal, reply } from "./playedJob";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { currentJob } = await import("./currentJob.svelte");
const { pins } = await import("./pin.svelte");
const { troubles } = await import("./troubles.svelte");

beforeEach(openPlayed);

test("a command names the head that was shown, and the answer is what is shown next", async () => {
  core.enter = reply(2);
  expect(await currentJob.ask({ begin: { step: "identify" } })).toBe(true);
  expect(askedFor("enter")[0]).toMatchObject({ job: "j1", head: { seq: 1, hash: "h1" }, actor: ode });
  expect(currentJob.page?.head.seq).toBe(2);
});

test("a refused command is no trouble and says why", async () => {
  core.enter = reply(1, refusal);
  expect(await currentJob.ask("finish")).toBe(false);
  expect([troubles.refused, troubles.last]).toEqual([refusal, null]);
});

test("a command tried again after a failure keeps its id, another command gets its own", async () => {
  core.enter = () => {
    throw { kind: "store", message: "The disk is full." };
  };
  expect(await currentJob.ask("finish")).toBe(false);
  expect(troubles.last?.message).toBe("The disk is full.");
  core.enter = reply(2);
  await currentJob.ask("finish");
  await currentJob.ask("finish");
  const ids = askedFor("enter").map((takes) => takes.request);
  expect(ids[0]).toBe(ids[1]);
  expect(ids[2]).not.toBe(ids[1]);
});

test("two taps at once are one command", async () => {
  core.enter = reply(2);
  const [first, second] = await Promise.all([currentJob.ask("finish"), currentJob.ask("finish")]);
  expect([first, second, askedFor("enter").length]).toEqual([true, false, 1]);
});

test("a job that has moved on is drawn anew", async () => {
  core.enter = () => {
    throw { kind: "stale", message: "The job has moved on." };
  };
  core.look = page(5);
  await currentJob.ask("finish");
  expect(currentJob.page?.head.seq).toBe(5);
});

test("a command at a hold point asks the PIN and is made again once it was given", async () => {
  const answers = [reply(1, refusal, "m"), reply(2)];
  core.enter = () => answers.shift();
  const asking = currentJob.ask("finish");
  await vi.waitFor(() => expect(pins.asked?.person).toBe("m"));
  expect([currentJob.busy, troubles.refused]).toEqual([false, refusal]);
  pins.end(true);
  expect(await asking).toBe(true);
  expect([currentJob.page?.head.seq, troubles.refused]).toEqual([2, null]);
});

test("nobody gives the PIN: nothing is entered, and what is missing is said", async () => {
  core.enter = reply(1, refusal, "m");
  const asking = currentJob.ask("finish");
  await vi.waitFor(() => expect(pins.asked).not.toBeNull());
  pins.end(false);
  expect(await asking).toBe(false);
  expect([askedFor("enter").length, troubles.refused]).toEqual([1, refusal]);
});

test("a photo that can't be taken in is told", async () => {
  core.add_photo = () => Promise.reject({ kind: "photo", message: "This is no photo." });
  expect(await currentJob.takePhoto(new Blob())).toBeNull();
  expect(troubles.last?.message).toBe("This is no photo.");
  expect(currentJob.busy).toBe(false);
});
