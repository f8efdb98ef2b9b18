import { expect, test } from "vitest";
import type { JobLine } from "../../core/types";
import { grouped } from "./order";

const line = (repair_order: string, changed: string, ended: boolean) =>
  ({ repair_order, ended, changed_ms: new Date(changed).getTime() }) as JobLine;

test("open jobs come first, those that have ended by their day, the newest first", () => {
  const groups = grouped([
    line("ended at noon", "2026-03-02T12:00", true),
    line("open long ago", "2026-02-20T08:00", false),
    line("ended the day before", "2026-03-01T16:00", true),
    line("ended in the evening", "2026-03-02T17:00", true),
    line("open today", "2026-03-02T09:00", false),
  ]);
  expect(groups.map(({ day, jobs }) => [day, jobs.map((job) => job.repair_order)])).toEqual([
    [null, ["open today", "open long ago"]],
    ["2026-03-02", ["ended in the evening", "ended at noon"]],
    ["2026-03-01", ["ended the day before"]],
  ]);
});

test("where no job is open, none is said to be", () => {
  expect(grouped([line("ended", "2026-03-02T12:00", true)]).map((group) => group.day)).toEqual([
    "2026-03-02",
  ]);
  expect(grouped([])).toEqual([]);
});
