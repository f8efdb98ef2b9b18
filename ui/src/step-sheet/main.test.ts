import { expect, test } from "vitest";
import type { EntryValue, EntryView, Refusal, Shown, StepView } from "../core/types";
import { endingBy, mainOf } from "./main";

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

test("a job that is ending, with nothing left to make safe, is stopped from every step that nobody is in", () => {
  expect(mainOf(step("waiting", { begin: refusal }), "live", [], false, true).does).toBe("stop");
  expect(mainOf(step("done"), "live", [], false, true).does).toBe("stop");
  expect(mainOf(step("in_progress"), "live", [], false, true).does).toBe("done");
});

const drive = {
  id: "drive",
  label: "Drive",
  ask: {
    choice: {
      options: [
        { class: "combustion_only", label: "combustion engine" },
        { class: "high_voltage", label: "hybrid or electric" },
      ],
    },
  },
  ends: ["high_voltage"],
} as unknown as EntryView;
const stick = {
  id: "stick",
  label: "Stick readings",
  ask: { level: {} },
  ends: ["not_reached"],
} as unknown as EntryView;

test("the answer that ends the job is named before it does", () => {
  const asks = step("in_progress", { entries: [drive] });
  const answer = (chosen: string) => (): EntryValue => ({ choice: { class: chosen } });
  expect(endingBy(asks, answer("high_voltage"))).toBe("hybrid or electric");
  expect(endingBy(asks, answer("combustion_only"))).toBeNull();
  expect(endingBy(asks, () => null)).toBeNull();
});

test("a measured value that ends the job is named by its entry, once the core has judged it", () => {
  const value = { level: {} } as unknown as EntryValue;
  const judged = step("in_progress", { entries: [{ ...stick, value, class: "not_reached" }] });
  expect(endingBy(judged, () => value)).toBe("Stick readings");
  expect(endingBy(judged, () => ({ ...value }))).toBeNull();
});
