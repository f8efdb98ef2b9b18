import { expect, test } from "vitest";
import { largest } from "./fit";

test("a text is as large as fits, and never smaller than can be read", () => {
  expect(largest(30, 16, () => true)).toBe(30);
  expect(largest(30, 16, (size) => size <= 22)).toBe(22);
  expect(largest(30, 16, () => false)).toBe(16);
});
