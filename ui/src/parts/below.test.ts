import { expect, test } from "vitest";
import { scrolls } from "./below";

test("what fits does not scroll, not even with a rest of rounding", () => {
  expect(scrolls({ scrollTop: 0, clientHeight: 400, scrollHeight: 400 })).toEqual({
    at_all: false,
    below: false,
  });
  expect(scrolls({ scrollTop: 0, clientHeight: 400, scrollHeight: 403 }).below).toBe(false);
});

test("more lies below until the end is reached, and then keys still reach it", () => {
  expect(scrolls({ scrollTop: 0, clientHeight: 400, scrollHeight: 900 }).below).toBe(true);
  expect(scrolls({ scrollTop: 500, clientHeight: 400, scrollHeight: 900 })).toEqual({
    at_all: true,
    below: false,
  });
});
