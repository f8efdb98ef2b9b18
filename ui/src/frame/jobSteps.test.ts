import { expect, test } from "vitest";
import type { PhaseView, Shown, StepView, Zone } from "../core/types";
import { byPhase, formOf, inJobSteps, isBehind, isFolded, knots, LANES, laneOf, laneX } from "./jobSteps";

const ALL: Shown[] = ["undecided", "waiting", "open", "in_progress", "done", "lapsed", "voided", "missed"];

function steps(count: number, shown: (at: number) => Shown = () => "waiting"): StepView[] {
  const zones: Zone[] = ["cabin", "bench", "under", "engine_bay"];
  return Array.from({ length: count }, (_, at) => ({
    id: `s${at}`,
    number: at + 1,
    zone: zones[at % zones.length],
    shown: shown(at),
  })) as unknown as StepView[];
}

test("the lane is the height where the work is: floor, bench, up", () => {
  expect(["cabin", "engine_bay", "bench", "under"].map((zone) => laneOf(zone as Zone))).toEqual([
    "floor",
    "floor",
    "bench",
    "up",
  ]);
  const middles = LANES.map((lane) => laneX(lane, 103));
  expect(middles).toEqual([...middles].sort((a, b) => a - b));
  expect(middles.every((x) => x > 0 && x < 103)).toBe(true);
});

test("knots stay within the height and none lies on another, for any number of steps and blocks", () => {
  for (const height of [60, 300, 540, 800]) {
    for (const count of [0, 1, 2, 57, 150]) {
      for (const blocks of [0, 1, 3, count]) {
        const laid = knots(
          steps(count, (at) => (at < blocks ? "in_progress" : "waiting")),
          `s${count - 1}`,
          103,
          46,
          height,
        );
        let edge = 46;
        for (const knot of laid) {
          expect(knot.y - knot.height / 2).toBeGreaterThanOrEqual(edge - 1e-6);
          edge = knot.y + knot.height / 2;
        }
        expect(edge).toBeLessThanOrEqual(height + 1e-6);
      }
    }
  }
});

test("57 steps in 486 pixels leave the block its full height, at both ends and in the middle", () => {
  for (const at of [0, 28, 56]) {
    const laid = knots(
      steps(57, (step) => (step === at ? "in_progress" : "done")),
      null,
      103,
      46,
      532,
    );
    const block = laid[at];
    expect(block).toMatchObject({ block: true, height: 30 });
    expect(laid.filter((knot) => knot.block)).toHaveLength(1);
    expect((block?.y ?? 0) - 15).toBeGreaterThanOrEqual(46);
    expect((block?.y ?? 0) + 15).toBeLessThanOrEqual(532 + 1e-6);
  }
});

test("the step that is looked at is a block too, and is marked", () => {
  const laid = knots(steps(5), "s2", 103, 0, 500);
  expect(laid.map((knot) => [knot.block, knot.lookedAt])).toEqual([
    [false, false],
    [false, false],
    [true, true],
    [false, false],
    [false, false],
  ]);
});

test("what is skipped or not in this job is left out", () => {
  const all = steps(4, (at) => (["done", "skipped", "not_in_this_job", "open"] as const)[at] ?? "open");
  expect(inJobSteps(all).map((step) => step.id)).toEqual(["s0", "s3"]);
  expect(knots(all, "s1", 103, 0, 500).map((knot) => knot.id)).toEqual(["s0", "s3"]);
});

test("every state in the job steps has a form of its own", () => {
  expect(new Set(ALL.map(formOf)).size).toBe(ALL.length);
});

test("the line is thick where work was done, also where it lapsed or was voided", () => {
  expect(ALL.filter(isBehind)).toEqual(["done", "lapsed", "voided"]);
});

/** Phases of two steps each, in these states. */
function phased(...shown: Shown[]) {
  const all = steps(shown.length, (at) => shown[at] ?? "open").map((step, at) => ({
    ...step,
    phase: at >> 1,
  }));
  const views = Array.from({ length: Math.ceil(shown.length / 2) }, (_, at) => ({ title: `phase ${at}` }));
  return { all, views: views as PhaseView[] };
}

test("a phase is done where no step is left to do or to put right", () => {
  const { all, views } = phased(
    "done",
    "skipped",
    "done",
    "lapsed",
    "not_in_this_job",
    "done",
    "done",
    "open",
  );
  expect(byPhase(views, all).map((phase) => phase.done)).toEqual([true, false, true, false]);
});

test("phases have their own steps, and one without any is left out", () => {
  const { all, views } = phased("done", "done", "done", "done", "open", "waiting");
  const open = all.filter((step) => step.shown === "open");
  expect(byPhase(views, open).map((phase) => [phase.at, phase.steps.map((step) => step.id)])).toEqual([
    [2, ["s4"]],
  ]);
});

test("a done phase is folded, but for the one whose step is looked at, and as somebody turns it", () => {
  const { all, views } = phased("done", "done", "done", "done", "open", "waiting");
  const phases = byPhase(views, all);
  const folded = (turned: [number, boolean][]) =>
    phases.map((phase) => isFolded(phase, "s2", new Map(turned)));
  expect(folded([])).toEqual([true, false, false]);
  expect(folded([[0, false]])).toEqual([false, false, false]);
  expect(folded([[1, true]])).toEqual([true, true, false]);
  expect(folded([[2, true]])).toEqual([true, false, false]);
});
