import { expect, test } from "vitest";
import type { PlanDoing, PlanPage, PlanWait } from "../core/types";
import { isWaiting, rowsOf } from "./order";

const doing = (
  id: string,
  from_min: number,
  until_min: number,
  does: PlanDoing["does"] = "work",
): PlanDoing => ({
  person: 1,
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
  meanwhile: { running: [], can: [] },
});

test("a wait stands with what is over when it begins, one that runs already with the first", () => {
  const rows = rowsOf(
    plan([doing("stop", 0, 1, "move"), doing("covers", 1, 20)], [wait("cool", 1, 40), wait("drain", 0, 9)]),
  );
  expect(rows.map((row) => [row.doing.id, row.waits.map((one) => one.step)])).toEqual([
    ["stop", ["cool", "drain"]],
    ["covers", []],
  ]);
});

test("walking is no row", () => {
  expect(rowsOf(plan([doing("bench", 0, 1, "walk"), doing("filter", 1, 9)], [])).length).toBe(1);
});

test("a step waits while an entry is not yet as it must be or its time runs", () => {
  const entry = { not_yet: false, ms_left: null };
  expect(isWaiting({ shown: "in_hand", entries: [entry] })).toBe(false);
  expect(isWaiting({ shown: "in_hand", entries: [entry, { ...entry, not_yet: true }] })).toBe(true);
  expect(isWaiting({ shown: "in_hand", entries: [{ ...entry, ms_left: 5 }] })).toBe(true);
  expect(isWaiting({ shown: "open", entries: [{ ...entry, not_yet: true }] })).toBe(false);
});
