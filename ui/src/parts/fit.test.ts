import { expect, test } from "vitest";
import { columns, largest } from "./fit";

test("a text is as large as fits, and never smaller than can be read", () => {
  expect(largest(30, 16, () => true)).toBe(30);
  expect(largest(30, 16, (size) => size <= 22)).toBe(22);
  expect(largest(30, 16, () => false)).toBe(16);
});

test("as many columns as fit with their gaps, and one where none does", () => {
  expect(columns(1242, 240, 19)).toBe(4);
  expect(columns(499, 240, 19)).toBe(2);
  expect(columns(498, 240, 19)).toBe(1);
  expect(columns(0, 240, 19)).toBe(1);
});
