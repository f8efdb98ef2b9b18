import { expect, test } from "vitest";
import { bands } from "./bands";

test("a tablet of 800 pixels gets 128, 544 and 128", () => {
  expect(bands(800, 0.16, 0.16)).toEqual({ vehicleLine: 128, stepSheet: 544, tray: 128 });
});

test("the bands fill every height from nothing to a tall screen, without a gap and without overlap", () => {
  for (let height = 0; height <= 2400; height++) {
    const { vehicleLine, stepSheet, tray } = bands(height, 0.16, 0.18);
    expect(vehicleLine + stepSheet + tray).toBe(height);
    expect(Math.min(vehicleLine, stepSheet, tray)).toBeGreaterThanOrEqual(0);
  }
});

test("the outer bands are equal and within half a pixel of 16 percent", () => {
  for (const height of [480, 601, 719.5, 800, 1079, 1200]) {
    const { vehicleLine, tray } = bands(height, 0.16, 0.16);
    expect(vehicleLine).toBe(tray);
    expect(Math.abs(vehicleLine - Math.floor(height) * 0.16)).toBeLessThanOrEqual(0.5);
  }
});

test("the outer bands have a share each", () => {
  expect(bands(1280, 0.165, 0.18)).toEqual({ vehicleLine: 211, stepSheet: 839, tray: 230 });
});
