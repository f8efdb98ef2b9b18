import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { asked, askedFor, core, opens } from "../core/played";
import type { Planning } from "../core/types";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { openWindow } = await import("../state/opening");
const { troubles } = await import("../state/troubles.svelte");
const { plans } = await import("./plans.svelte");

const stops: (() => void)[] = [];

function planning(total_min: number, searching: number | null): Planning {
  const page = {
    seq: 4,
    doings: [],
    waits: [],
    total_min,
    bound_min: total_min,
    exact: searching === null,
    plan_only: false,
    meanwhile: { running: [], can: [] },
  };
  return { page, none: null, searching };
}

function follow(people: number, best: boolean): void {
  stops.push(plans.follow("j1", 4, people, best));
}

function minutes(people: number): number | undefined {
  return plans.of("j1", 4, people)?.page?.total_min;
}

beforeEach(async () => {
  vi.useFakeTimers();
  opens([]);
  await openWindow();
  troubles.last = null;
  asked.length = 0;
});

afterEach(() => {
  for (const stop of stops.splice(0)) stop();
  vi.useRealTimers();
});

test("the plans for one person and for two stand beside each other", async () => {
  core.plan = ({ people }: { people: number }) => planning(people === 1 ? 540 : 473, null);
  follow(1, true);
  follow(2, false);
  await vi.advanceTimersByTimeAsync(1);
  expect([minutes(1), minutes(2)]).toEqual([540, 473]);
  expect(plans.of("j1", 5, 2)).toBeNull();
  expect(askedFor("plan").map(({ people, best }) => [people, best])).toEqual([
    [1, true],
    [2, false],
  ]);
});

test("a good order stands at once, and the best one when it is found", async () => {
  const answers = [planning(510, 0), planning(510, 61), planning(473, null)];
  core.plan = () => answers.shift();
  follow(2, true);
  await vi.advanceTimersByTimeAsync(1);
  expect([minutes(2), plans.of("j1", 4, 2)?.searching]).toEqual([510, 0]);
  await vi.advanceTimersByTimeAsync(300);
  expect(plans.of("j1", 4, 2)?.searching).toBe(61);
  await vi.advanceTimersByTimeAsync(300);
  expect([minutes(2), plans.of("j1", 4, 2)?.searching]).toEqual([473, null]);
});

test("a search that goes on is not asked after where a good order is enough, nor when nobody looks", async () => {
  core.plan = planning(510, 20);
  follow(2, false);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(askedFor("plan").length).toBe(1);
  follow(2, true);
  await vi.advanceTimersByTimeAsync(700);
  expect(askedFor("plan").length).toBe(4);
  for (const stop of stops.splice(0)) stop();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(askedFor("plan").length).toBe(4);
});

test("a plan is made anew as the clock goes on, and rests ten times as long as its search took", async () => {
  core.plan = () => planning(473, askedFor("plan").length < 41 ? 50 : null);
  follow(2, true);
  await vi.advanceTimersByTimeAsync(40 * 300 + 1);
  expect(askedFor("plan").length).toBe(41);
  await vi.advanceTimersByTimeAsync(119_000);
  expect(askedFor("plan").length).toBe(41);
  await vi.advanceTimersByTimeAsync(2_000);
  expect(askedFor("plan").at(-1)?.stale).toBe(true);
});

test("what the core can't plan is told once and asked for again by who looks again", async () => {
  core.plan = new Error("The store can't be read.");
  follow(1, true);
  await vi.advanceTimersByTimeAsync(1_000);
  expect([troubles.last?.message, askedFor("plan").length]).toEqual(["The store can't be read.", 1]);
  core.plan = planning(540, null);
  follow(1, true);
  await vi.advanceTimersByTimeAsync(1);
  expect(minutes(1)).toBe(540);
});
