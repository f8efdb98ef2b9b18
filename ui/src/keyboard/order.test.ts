import { expect, test } from "vitest";
import { after, type Kind, ordered } from "./order";

const stop = (name: string, more: Partial<Kind> = {}) => ({
  name,
  kind: { asked: false, main: false, key: false, ...more },
});

test("what is asked comes first, then the main button, then the rest, and keys of a keypad last", () => {
  const stops = [
    stop("vehicle line"),
    stop("7", { key: true }),
    stop("no trace", { key: true, asked: true }),
    stop("temperature", { asked: true }),
    stop("Back"),
    stop("ENTER", { main: true }),
  ];
  expect(ordered(stops, ({ kind }) => kind).map(({ name }) => name)).toEqual([
    "no trace",
    "temperature",
    "ENTER",
    "vehicle line",
    "Back",
    "7",
  ]);
});

test("after the last one comes the first again", () => {
  expect(after(["a", "b", "c"], "a")).toBe("b");
  expect(after(["a", "b", "c"], "c")).toBe("a");
  expect(after(["a"], "a")).toBe("a");
});

test("backward the last comes before the first", () => {
  expect(after(["a", "b", "c"], "b", "back")).toBe("a");
  expect(after(["a", "b", "c"], "a", "back")).toBe("c");
  expect(after(["a", "b", "c"], null, "back")).toBe("c");
});

test("from what is none of them, or from nothing, one begins at the first", () => {
  expect(after(["a", "b"], "gone")).toBe("a");
  expect(after(["a", "b"], null)).toBe("a");
  expect(after([], null)).toBeNull();
});
