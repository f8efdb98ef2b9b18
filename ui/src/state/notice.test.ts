import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { notice } from "./notice.svelte";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  notice.clear();
  vi.useRealTimers();
});

test("what is said stands for a while", () => {
  notice.tell("Step 4: time is up.", "ready");
  vi.advanceTimersByTime(7_000);
  expect(notice.text).toBe("Step 4: time is up.");
  vi.advanceTimersByTime(2_000);
  expect(notice.text).toBeNull();
});

test("what is said later stands for its own time, and the same words are new", () => {
  notice.tell("No entry is open.", "refused");
  const first = notice.heard;
  vi.advanceTimersByTime(7_000);
  notice.tell("No entry is open.", "refused");
  expect(notice.heard).not.toBe(first);
  vi.advanceTimersByTime(7_000);
  expect([notice.text, notice.heard?.kind]).toEqual(["No entry is open.", "refused"]);
});

test("what the screen says itself is only heard", () => {
  notice.hear("ready");
  expect([notice.text, notice.heard?.kind]).toEqual([null, "ready"]);
});
