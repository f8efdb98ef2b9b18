import { expect, test } from "vitest";
import type { EntryView, JobView, Shown, StepView } from "../core/types";
import { entryToAsk, isToStop, stepToShow } from "./focus";

function job(...shown: Shown[]): JobView {
  return { steps: shown.map((state, at) => ({ id: `s${at}`, shown: state })) } as unknown as JobView;
}

test("a step in progress comes before everything else", () => {
  expect(stepToShow(job("open", "done", "in_progress", "open"), null)?.id).toBe("s2");
});

test("after a step the next one in the file that can begin is shown, then those before it", () => {
  expect(stepToShow(job("open", "done", "open"), "s1")?.id).toBe("s2");
  expect(stepToShow(job("open", "done", "waiting"), "s1")?.id).toBe("s0");
});

test("where nothing can begin a lapsed step is shown, then the first that waits, then the last", () => {
  expect(stepToShow(job("waiting", "done", "lapsed"), null)?.id).toBe("s2");
  expect(stepToShow(job("done", "waiting", "waiting"), null)?.id).toBe("s1");
  expect(stepToShow(job("done", "done"), null)?.id).toBe("s1");
  expect(stepToShow(job(), null)).toBeNull();
});

function step(...entries: Partial<EntryView>[]): StepView {
  const whole = entries.map((entry, at) => ({
    id: `e${at}`,
    optional: false,
    ask: { note: { words: [] } },
    ...entry,
  }));
  return { entries: whole } as unknown as StepView;
}

test("the next entry asked for is the first missing one after the last, then from the top", () => {
  const three = step({}, {}, {});
  expect(entryToAsk(three, (id) => id === "e1", "e0")).toBe("e2");
  expect(entryToAsk(three, (id) => id === "e2" || id === "e1", "e2")).toBe("e0");
  expect(entryToAsk(three, () => true, "e0")).toBeNull();
});

test("a value that is not yet what is needed is not asked for again at once", () => {
  expect(entryToAsk(step({}), () => false, "e0")).toBeNull();
  expect(entryToAsk(step({}, {}), (id) => id === "e0", "e1")).toBeNull();
});

test("optional entries and signatures are not asked for by themselves", () => {
  const mixed = step({}, { optional: true }, { ask: { sign_off: { sign: "x" } } });
  expect(entryToAsk(mixed, (id) => id === "e0", "e0")).toBeNull();
});

test("a job that is ending is to be stopped once no step that makes it safe is left", () => {
  const ending = (view: JobView) => ({ ...view, over: "ending" as const });
  expect(isToStop(ending(job("done", "waiting")))).toBe(true);
  expect(isToStop(ending(job("done", "in_progress")))).toBe(false);
  expect(isToStop({ ...job("done", "waiting"), over: "going" })).toBe(false);
  const open = ending(job("open"));
  for (const step of open.steps) step.begin = null;
  expect(isToStop(open)).toBe(false);
});
