import { expect, test } from "vitest";
import type { TrayView } from "../core/types";
import { items } from "./checklists";
import { fitted, LINES, laidOut, linesOf } from "./pieces";

function off(name: string, parts: Partial<TrayView> = {}): TrayView {
  return { id: name, name, off: 1, count: 1, reuse: "yes", draws: null, recount_agrees: true, ...parts };
}

test("a piece is drawn as the checklist says, and without its word in a form that fits anything", () => {
  expect(linesOf(off("solenoid pack", { draws: "bolt" }))).toBe(LINES.bolt);
  expect(linesOf(off("bolts"))).toBe(LINES.any);
});

test("every part and fastener that a checklist counts has a drawing of its own kind", () => {
  expect(items.length).toBeGreaterThan(0);
  const drawn: (string | undefined)[] = Object.keys(LINES).filter((piece) => piece !== "any");
  expect(items.filter((item) => !drawn.includes(item.draws))).toEqual([]);
});

test("what does not fit is counted in the last cell", () => {
  const tray = ["a", "b", "c", "d"].map((name) => off(name));
  expect(fitted(tray, 4)).toEqual({ shown: tray, more: 0 });
  expect(fitted(tray, 3)).toEqual({ shown: tray.slice(0, 2), more: 2 });
  expect(fitted(tray, 0)).toEqual({ shown: [], more: 4 });
});

test("what must be counted again lies first, then what goes back, then what is replaced", () => {
  const tray = [
    off("filter", { reuse: "never", draws: "filter" }),
    off("pan", { reuse: "once", draws: "pan" }),
    off("gasket", { reuse: "never", draws: "gasket", recount_agrees: false }),
    off("long bolts", { draws: "bolt" }),
    off("nuts", { reuse: "never", draws: "nut" }),
    off("short bolts", { draws: "bolt" }),
  ];
  expect(laidOut(tray).map((item) => item.name)).toEqual([
    "gasket",
    "long bolts",
    "short bolts",
    "pan",
    "nuts",
    "filter",
  ]);
});
