import { expect, test } from "vitest";
import type { PlanDoing, PlanPage, PlanWait } from "../core/types";
import { isWaiting, ownPeople, rowsOf } from "./order";

const doing = (
  id: string,
  from_min: number,
  until_min: number,
  does: PlanDoing["does"] = "work",
  person = 1,
): PlanDoing => ({
  person,
  does,
  id,
  title: id,
  from_min,
  until_min,
});
const wait = (step: string, from_min: number, until_min: number): PlanWait => ({
  step,
  what: step,
  from_min,
  until_min,
  attended: false,
  idle_min: 0,
});
const plan = (doings: PlanDoing[], waits: PlanWait[]): PlanPage => ({
  seq: 1,
  doings,
  waits,
  total_min: 60,
  bound_min: 60,
  exact: true,
  plan_only: false,
  meanwhile: { running: [], can: [] },
});

test("a wait stands with what is over when it begins, one that runs already with the first", () => {
  const rows = rowsOf(
    plan(
      [doing("stop", 0, 1, "vehicle_action"), doing("covers", 1, 20)],
      [wait("cool", 1, 40), wait("drain", 0, 9)],
    ),
  );
  expect(rows.map((row) => [row.doing.id, row.waits.map((one) => one.step)])).toEqual([
    ["stop", ["cool", "drain"]],
    ["covers", []],
  ]);
});

test("of two people a wait stands with who brought it about, not with who began last", () => {
  const rows = rowsOf(
    plan(
      [doing("drain", 0, 5), doing("covers", 3, 20, "work", 2), doing("filter", 15, 25)],
      [wait("drain", 5, 15)],
    ),
  );
  expect(rows.map((row) => [row.doing.id, row.doing.person, row.waits.length])).toEqual([
    ["drain", 1, 1],
    ["covers", 2, 0],
    ["filter", 1, 0],
  ]);
});

test("where nobody chose, the plan is for the checklist's people and for two at most", () => {
  expect([1, 2, 3].map((crew) => ownPeople({ crew }))).toEqual([1, 2, 2]);
});

test("walking is no row", () => {
  expect(rowsOf(plan([doing("bench", 0, 1, "walk"), doing("filter", 1, 9)], [])).length).toBe(1);
});

test("a step waits while an entry is not yet as it must be or its time runs", () => {
  const entry = { not_yet: false, ms_left: null };
  expect(isWaiting({ shown: "in_progress", entries: [entry] })).toBe(false);
  expect(isWaiting({ shown: "in_progress", entries: [entry, { ...entry, not_yet: true }] })).toBe(true);
  expect(isWaiting({ shown: "in_progress", entries: [{ ...entry, ms_left: 5 }] })).toBe(true);
  expect(isWaiting({ shown: "open", entries: [{ ...entry, not_yet: true }] })).toBe(false);
});
