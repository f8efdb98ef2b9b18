import { expect, test } from "vitest";
import type { ConditionView, GateView, JobView, StepView } from "../core/types";
import { conditions } from "./checklists";
import { ageing, drawn, said, whoIsUnder } from "./vehicle";

function condition(draws: string | null, value: string): ConditionView {
  return { id: value, name: `the ${draws}`, value, says: `${value} in words`, values: [], draws };
}

function inProgress(who: string, zone: StepView["zone"]): StepView {
  return { shown: "in_progress", zone, begun: { who, name: who } } as unknown as StepView;
}

function gate(name: string, last: string | null, minutes: number | null, known = true): GateView {
  return {
    id: name,
    name,
    last: last === null ? null : { id: "read", args: {}, text: last },
    known: known ? {} : null,
    ms_fresh: minutes && minutes * 60_000,
  } as GateView;
}

function job(parts: Partial<JobView>): JobView {
  return { conditions: [], steps: [], gates: [], ...parts } as JobView;
}

test("every value that a checklist lets the vehicle line draw has a drawing", () => {
  const asked = conditions.flatMap(({ draws, values }) =>
    draws ? values.map((value) => [draws, value.id] as const) : [],
  );
  expect(asked.length).toBeGreaterThan(0);
  for (const [draws, value] of asked) {
    expect(drawn(job({ conditions: [condition(draws, value)] })), `${draws} = ${value}`).toHaveProperty(
      draws,
      value,
    );
  }
});

test("a value that has no drawing draws nothing, and is said in words", () => {
  const view = job({ conditions: [condition("lift", "leaning")] });
  expect(drawn(view).lift).toBeNull();
  expect(said(view, "under", 9)).toEqual([{ id: "leaning", name: "the lift", value: "leaning in words" }]);
});

test("a part that no condition draws is not drawn, whatever the condition is called", () => {
  const view = job({ conditions: [{ ...condition(null, "off"), id: "pan" }] });
  expect(drawn(view).pan).toBeNull();
  expect(said(view, "under", 9)).toEqual([]);
});

test("somebody is under the vehicle while a step there is in progress, and nobody when it is elsewhere", () => {
  expect(drawn(job({ steps: [inProgress("R. Ode", "cabin")] })).under).toBe(false);
  const view = job({
    steps: [inProgress("R. Ode", "under"), inProgress("T. Marl", "under"), inProgress("R. Ode", "under")],
  });
  expect(drawn(view).under).toBe(true);
  expect(whoIsUnder(view)).toEqual(["R. Ode", "T. Marl"]);
});

test("who is under keeps a place where the words have no room for every condition", () => {
  const conditions = ["a", "b", "c", "d"].map((value) => condition("lift", value));
  const cells = said(job({ conditions, steps: [inProgress("R. Ode", "under")] }), "under", 3);
  expect(cells.map((cell) => cell.id)).toEqual(["a", "b", "under"]);
});

test("of what is known and ages, that which runs out first stands beside the drawing", () => {
  const gates = [
    gate("probe", "44 °C", 29),
    gate("warm", "52 °C", 3),
    gate("level", "23 mm", null),
    gate("old", "9", 1, false),
  ];
  expect(ageing(job({ gates }))).toEqual({ id: "warm", name: "warm", value: "52 °C", msFresh: 180_000 });
  expect(ageing(job({ gates: gates.slice(2) }))).toBeNull();
});
