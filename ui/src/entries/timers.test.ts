import { expect, test } from "vitest";
import type { JobView } from "../core/types";
import { EndOfWaits, waits } from "./timers";

const wait = (msLeft: number) => [{ key: "fire_watch/time", msLeft }];

test("the bell rings once when a wait ends", () => {
  const ends = new EndOfWaits();
  expect(ends.ended(wait(1500), 0)).toBe(false);
  expect(ends.ended(wait(1500), 1000)).toBe(false);
  expect(ends.ended(wait(1500), 2000)).toBe(true);
  expect(ends.ended(wait(1500), 3000)).toBe(false);
  expect(ends.ended(wait(0), 0)).toBe(false);
});

test("a wait that was over before the window opened does not ring", () => {
  expect(new EndOfWaits().ended(wait(0), 0)).toBe(false);
});

test("a wait whose step is left does not ring", () => {
  const ends = new EndOfWaits();
  ends.ended(wait(1500), 0);
  expect(ends.ended([], 2000)).toBe(false);
});

test("only steps in hand are waited for", () => {
  const entry = (id: string, ms_left: number | null) => ({ id, ms_left });
  const view = {
    steps: [
      { id: "fire_watch", shown: "in_hand", entries: [entry("time", 60_000), entry("look", null)] },
      { id: "relearn", shown: "done", entries: [entry("idle", 1000)] },
    ],
  } as unknown as JobView;
  expect(waits(view)).toEqual([{ key: "fire_watch/time", msLeft: 60_000 }]);
});
