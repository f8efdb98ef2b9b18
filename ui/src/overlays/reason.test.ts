import { expect, test } from "vitest";
import { readDraft, reasonOf, tapped, wordsFor } from "./reason";

test("a reason is the words that were tapped and what was written", () => {
  const words = tapped(tapped({ words: [], text: " left side " }, "Typed wrong"), "Wrong step");
  expect(reasonOf(words)).toBe("Typed wrong. Wrong step. left side");
  expect(reasonOf(tapped(words, "Typed wrong"))).toBe("Wrong step. left side");
  expect(reasonOf({ words: [], text: "  " })).toBe("");
});

test("a kept draft is read, a damaged one is empty", () => {
  expect(readDraft('{"words":["a"],"text":"b"}')).toEqual({ words: ["a"], text: "b" });
  expect(readDraft('{"words":"a"}')).toEqual({ words: [], text: "" });
  expect(readDraft("{")).toEqual({ words: [], text: "" });
  expect(readDraft(undefined)).toEqual({ words: [], text: "" });
});

test("each short word for a reason is a sentence of its own", () => {
  expect(wordsFor("void")).toEqual([
    "Typing mistake",
    "Wrong step",
    "Second reading was different",
    "Wrong vehicle",
  ]);
  expect(wordsFor("observe")).toHaveLength(4);
});
