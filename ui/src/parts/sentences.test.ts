import { expect, test } from "vitest";
import type { Refusal } from "../core/types";
import { sentences } from "./sentences";

const refusal: Refusal = {
  message: { id: "a", args: {}, text: "Not now." },
  unmet: [{ id: "b", args: {}, text: "Level is low." }],
};

test("a refusal is told sentence by sentence", () => {
  expect(sentences(refusal)).toEqual(["Not now.", "Level is low."]);
});
