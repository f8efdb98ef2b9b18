import { expect, test } from "vitest";
import type { JobView, Shown } from "../../core/types";
import { goesOnTo, stepNamed } from "./record";

const step = (title: string, shown: Shown) => ({ id: title, title, shown });
const view = {
  steps: [
    step("Drain the fluid", "waiting"),
    step("Take the pan down", "open"),
    step("Hand over", "waiting"),
  ],
} as unknown as JobView;

test("a missing step leads to it, a part that is off leads nowhere", () => {
  expect(stepNamed(view, "Hand over")?.id).toBe("Hand over");
  expect(stepNamed(view, "exhaust flange nuts 3")).toBeNull();
});

test("one goes on to the first missing step that can begin, else to the first missing one", () => {
  const off = { says: "Off the vehicle", what: ["exhaust pipe 1"] };
  const steps = { says: "Not done", what: ["Drain the fluid", "Take the pan down"] };
  expect(goesOnTo(view, [off, steps])?.id).toBe("Take the pan down");
  expect(goesOnTo(view, [{ says: "Not done", what: ["Hand over"] }])?.id).toBe("Hand over");
  expect(goesOnTo(view, [off])).toBeNull();
});
