import { expect, test } from "vitest";
import type { JobView } from "../core/types";
import { minutesLeft, runOut, waits } from "./waits";

function job(
  timers: [string, number | null, "in_progress" | "done"][],
  fresh: [string, number | null, boolean][],
): JobView {
  return {
    steps: timers.map(([id, ms_left, shown], at) => ({
      id,
      number: at + 1,
      shown,
      entries: [{ id: "time", label: `${id} time`, ms_left }],
    })),
    gates: fresh.map(([id, ms_fresh, known]) => ({ id, name: id, ms_fresh, known: known ? {} : null })),
  } as unknown as JobView;
}

test("timers of steps in progress come first, then what is known for a while, each the sooner first", () => {
  const view = job(
    [
      ["watch", 60_000, "in_progress"],
      ["cure", 5_000, "in_progress"],
      ["idle", 1_000, "done"],
      ["look", null, "in_progress"],
    ],
    [
      ["warm", 9_000, true],
      ["probe", 2_000, true],
      ["level", null, true],
      ["old", 1_000, false],
    ],
  );
  expect(waits(view, 0).map((wait) => [wait.key, wait.msLeft])).toEqual([
    ["timer/cure/time", 5_000],
    ["timer/watch/time", 60_000],
    ["fresh/probe", 2_000],
    ["fresh/warm", 9_000],
  ]);
});

test("no step is taken for something that is known, whatever both are called", () => {
  const view = job([["fresh", 60_000, "in_progress"]], [["fresh/time", 2_000, true]]);
  expect(new Set(waits(view, 0).map((wait) => wait.key)).size).toBe(2);
});

test("what is left is counted from when the page came, and never falls below nothing", () => {
  const view = job([["watch", 60_000, "in_progress"]], [["probe", 2_000, true]]);
  expect(waits(view, 59_000).map((wait) => wait.msLeft)).toEqual([1_000, 0]);
});

test("a timer that runs out while it is looked at is told once", () => {
  const view = job([["watch", 60_000, "in_progress"]], []);
  const running = new Set(["timer/watch/time"]);
  expect(runOut(running, waits(view, 59_999))).toEqual([]);
  expect(runOut(running, waits(view, 60_000)).map((wait) => wait.key)).toEqual(["timer/watch/time"]);
  expect(runOut(new Set(), waits(view, 61_000))).toEqual([]);
});

test("knowledge that has run out does not sound", () => {
  expect(runOut(new Set(["fresh/probe"]), waits(job([], [["probe", 0, true]]), 0))).toEqual([]);
});

test("only whole minutes that are surely left are said", () => {
  expect([179_999, 60_000, 59_999, 0, -5].map(minutesLeft)).toEqual([2, 1, 0, 0, 0]);
});
