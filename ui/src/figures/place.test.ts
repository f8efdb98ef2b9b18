import { expect, test } from "vitest";
import { along, betweenPoints, type Place, places } from "./place";

const inside = { x: 0, y: 0, width: 400, height: 200 };
const words = { at: { x: 200, y: 100 }, width: 120, height: 20 };
const apart = (one: Place, other: Place) =>
  one.x >= other.x + other.width ||
  other.x >= one.x + one.width ||
  one.y >= other.y + other.height ||
  other.y >= one.y + one.height;

test("words at one point do not cover each other and stay inside", () => {
  const edges = along(
    [
      { x: 210, y: 100 },
      { x: 400, y: 100 },
    ],
    10,
  );
  const found = places([words, words, words, words], { points: [], edges, inside });
  const there = found.filter((place) => place !== null);
  expect(there).toHaveLength(4);
  there.forEach((one, at) => {
    expect(one.x >= 0 && one.x + one.width <= 400).toBe(true);
    for (const other of there.slice(at + 1)) expect(apart(one, other)).toBe(true);
    for (const edge of edges) expect(apart(one, edge)).toBe(true);
  });
});

test("words that find no room are left out", () => {
  const narrow = { x: 0, y: 0, width: 90, height: 20 };
  expect(places([words], { points: [], edges: [], inside: narrow })).toEqual([null]);
});

test("words between fasteners reach from side to side, and end at those that stand beside them", () => {
  const cover = { x: 0, y: 0, width: 400, height: 200 };
  const bolts = [
    { x: 0, y: 0 },
    { x: 400, y: 90 },
    { x: 200, y: 200 },
  ];
  expect(betweenPoints(bolts, cover, 30, 20)).toEqual({ x: 0, width: 380 });
  expect(betweenPoints([...bolts, { x: 10, y: 149 }], cover, 30, 20)).toEqual({ x: 30, width: 350 });
});
