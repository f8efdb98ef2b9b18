import { expect, test } from "vitest";
import { collectedKey, entryKey, isOfStep, modeKey, reasonKey } from "./draftKey";

// Ids in which whatever could stand between the parts of a key stands too.
const ids = [
  "a",
  "a/b",
  "b",
  "mode",
  "value",
  "value/a",
  "collected",
  "reason",
  "stop",
  '"',
  '","',
  "\\",
  "[",
  "ä",
  "",
];

test("no two drafts have the same key, whatever stands in the ids", () => {
  const keys = [
    ...ids.flatMap((step) => ids.flatMap((entry) => [entryKey(step, entry), collectedKey(step, entry)])),
    ...ids.map(modeKey),
    ...ids.map((step) => reasonKey("void", step)),
    ...ids.map((step) => reasonKey("skip", step)),
    reasonKey("stop", null),
    reasonKey("observe", null),
  ];
  expect(new Set(keys).size).toBe(keys.length);
});

test("a step's drafts are its own, and a reason is no part of entering it", () => {
  const own = [entryKey("a", "b"), collectedKey("a", "b"), modeKey("a")];
  expect(own.map((key) => isOfStep(key, "a"))).toEqual([true, true, true]);
  const others = [entryKey("a/b", "c"), modeKey("a/b"), reasonKey("void", "a"), "a/b", "{", "null"];
  expect(others.map((key) => isOfStep(key, "a"))).toEqual(others.map(() => false));
});
