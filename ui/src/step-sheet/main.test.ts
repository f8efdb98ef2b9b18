import { expect, test } from "vitest";
import type { Refusal, Shown, StepView } from "../core/types";
import { mainOf } from "./main";

const refusal: Refusal = {
  message: { id: "a", args: {}, text: "Not now." },
  unmet: [{ id: "b", args: {}, text: "Level is low." }],
};

function step(shown: Shown, more: Partial<StepView> = {}): StepView {
  return { shown, begin: null, done: null, signs: [], missed_for: null, ...more } as StepView;
}

test("a step that can begin offers to, one that can't says why", () => {
  expect(mainOf(step("open"), "live", [], false)).toEqual({ does: "begin", closed: null, unsigned: [] });
  expect(mainOf(step("waiting", { begin: refusal }), "live", [], false).closed).toBe(refusal);
});

test("done waits for its signatures", () => {
  const held = step("in_progress", { signs: ["locks", "key"] });
  const given = [{ sign: "locks", by: "R. Ode", role: "technician" as const }];
  expect(mainOf(held, "live", given, false)).toEqual({ does: "done", closed: null, unsigned: ["key"] });
});

test("what comes after the work is offered by what became of the step", () => {
  const does = (shown: Shown, over = false) => mainOf(step(shown), "live", [], over).does;
  expect([does("lapsed"), does("voided"), does("missed"), does("done"), does("done", true)]).toEqual([
    "renew",
    "correct",
    "explain",
    "go_on",
    "go_on_ended",
  ]);
});

test("a step entered later or corrected asks for its signatures too", () => {
  expect(mainOf(step("open", { signs: ["a"] }), "later", [], false)).toEqual({
    does: "enter_later",
    closed: null,
    unsigned: ["a"],
  });
  expect(mainOf(step("voided", { signs: ["a"] }), "correction", [], false).does).toBe("correct");
});
