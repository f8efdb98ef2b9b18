import { expect, test } from "vitest";
import { secondsLeft, WIPE_SECONDS } from "./wipe";

test("touch is off for 15 seconds, counted down to the end", () => {
  const until = 1_000_000 + WIPE_SECONDS * 1000;
  expect([0, 1, 999, 1_000, 14_001, 14_999].map((ms) => secondsLeft(until, 1_000_000 + ms))).toEqual([
    15, 15, 15, 14, 1, 1,
  ]);
});

test("it is over after its time, also when the timer comes late, and never lasts longer", () => {
  expect(secondsLeft(15_000, 15_000)).toBe(0);
  expect(secondsLeft(15_000, 900_000)).toBe(0);
  expect(secondsLeft(15_000, -900_000)).toBe(15);
});
