import { expect, test } from "vitest";
import type { JobView, VehicleActionView } from "../core/types";
import { lostBy } from "./lost";

const view = {
  signs: [
    { id: "clear", text: "Nobody is under the vehicle." },
    { id: "key", text: "The key is away." },
  ],
  gates: [{ id: "probe", name: "exhaust probe" }],
} as unknown as JobView;

test("what a move makes lapse is said by the words of the sign-offs and by the names of what is known", () => {
  const move = { lapses: ["key", "clear"], forgets: ["probe"] } as unknown as VehicleActionView;
  expect(lostBy(move, view)).toEqual({
    signs: ["The key is away.", "Nobody is under the vehicle."],
    known: ["exhaust probe"],
  });
});

test("a move that makes nothing lapse loses nothing", () => {
  expect(lostBy({ lapses: [], forgets: [] } as unknown as VehicleActionView, view)).toEqual({
    signs: [],
    known: [],
  });
});
