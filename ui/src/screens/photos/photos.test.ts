import { expect, test } from "vitest";
import type { JobView, PhotoLine } from "../../core/types";
import { byStep, held, reach } from "./photos";

const view = {
  steps: [
    { id: "identify", number: 1, title: "Identify the vehicle" },
    { id: "pan", number: 2, title: "Take the pan down" },
  ],
} as unknown as JobView;
const photo = (step: string, label: string) =>
  ({ step, step_title: `Title of ${step}`, label }) as unknown as PhotoLine;

test("photos stand by step in the order of the checklist, steps without photos are left out", () => {
  const found = byStep(view, [photo("pan", "a"), photo("identify", "b"), photo("pan", "c")]);
  expect(found.map((step) => [step.number, step.photos.map((one) => one.label)])).toEqual([
    [1, ["b"]],
    [2, ["a", "c"]],
  ]);
  expect(byStep(view, [photo("pan", "a")])).toHaveLength(1);
});

test("a photo of a step that is not in the checklist is not lost", () => {
  expect(byStep(view, [photo("old_step", "a")])).toEqual([
    { number: null, title: "Title of old_step", photos: [photo("old_step", "a")] },
  ]);
});

test("a picture larger than its place is dragged to its edge and no further, a smaller one not at all", () => {
  expect(reach(1000, 600)).toBe(200);
  expect(reach(300, 600)).toBe(0);
  expect(held(250, 200)).toBe(200);
  expect(held(-250, 200)).toBe(-200);
  expect(held(50, 200)).toBe(50);
});
