import { expect, test } from "vitest";
import type { JobView, MissingLine, Shown } from "../../core/types";
import { goesOnTo, isMany } from "./record";

const step = (id: string, shown: Shown) => ({ id, title: "Same title", shown });
const view = {
  steps: [step("drain", "waiting"), step("pan_down", "open"), step("hand_over", "waiting")],
} as unknown as JobView;

const at = (step: string | null): MissingLine => ({ says: "Same title", step });

test("one goes on to the first missing step that can begin, else to the first missing one", () => {
  const off = { says: "Off the vehicle", what: [at(null)] };
  const steps = { says: "Not done", what: [at("drain"), at("pan_down")] };
  expect(goesOnTo(view, [off, steps])?.id).toBe("pan_down");
  expect(goesOnTo(view, [{ says: "Not done", what: [at("hand_over")] }])?.id).toBe("hand_over");
  expect(goesOnTo(view, [off])).toBeNull();
});

test("a few missing things are seen at once, many are folded", () => {
  const missing = (count: number) => ({
    says: "Not done",
    what: Array.from({ length: count }, () => at("drain")),
  });
  expect([1, 3, 4, 57].map((count) => isMany(missing(count)))).toEqual([false, false, true, true]);
});
