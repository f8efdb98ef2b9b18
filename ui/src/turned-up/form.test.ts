import { expect, test } from "vitest";
import { EMPTY, readForm } from "./form";

test("a form that was kept is gone on with, and what can't be read begins anew", () => {
  const kept = { ...EMPTY, asks: "piece" as const, text: "bracket", count: 2 };
  expect(readForm(JSON.stringify(kept))).toEqual(kept);
  expect(readForm('{"asks":"found"}')).toEqual({ ...EMPTY, asks: "found" });
  for (const broken of [undefined, "{", "null", "3"]) expect(readForm(broken)).toEqual(EMPTY);
});
