import { expect, test } from "vitest";
import type { TrayView } from "../core/types";
import { items } from "./checklists";
import { fitted, laidOut, type Piece, pieceOf } from "./pieces";

function off(name: string, parts: Partial<TrayView> = {}): TrayView {
  return { id: name, name, off: 1, count: 1, reuse: "yes", recount_agrees: true, ...parts };
}

test("a piece is drawn by what it is, not by whose it is", () => {
  const drawn: [string, Piece][] = [
    ["short pan bolts", "bolt"],
    ["hold-down bolt of the solenoid", "bolt"],
    ["exhaust joint nuts", "nut"],
    ["screws of the splash cover", "screw"],
    ["push fasteners of the splash cover", "push_fastener"],
    ["harness clips at the pan", "clip"],
    ["washer of the drain plug", "ring"],
    ["seal of the filter", "ring"],
    ["pan gasket", "gasket"],
    ["Pan", "pan"],
    ["filter", "filter"],
    ["exhaust pipe", "pipe"],
    ["exhaust rubber hangers", "hanger"],
    ["pan magnets", "magnet"],
    ["splash cover", "plate"],
    ["tie strap of the harness", "strap"],
    ["third-gear shift solenoid", "solenoid"],
    ["brackets", "bracket"],
  ];
  for (const [name, piece] of drawn) expect(pieceOf({ name }), name).toBe(piece);
});

test("a name without a known word gets the neutral form", () => {
  for (const name of ["thing", "", "box of bolts", "glass"]) expect(pieceOf({ name }), name).toBe("piece");
});

test("every part and fastener that a checklist counts has a drawing of its own kind", () => {
  const names = items.map((item) => item.name);
  expect(names.length).toBeGreaterThan(0);
  expect(names.filter((name) => pieceOf({ name }) === "piece")).toEqual([]);
});

test("what does not fit is counted in the last cell", () => {
  const tray = ["a", "b", "c", "d"].map((name) => off(name));
  expect(fitted(tray, 4)).toEqual({ shown: tray, more: 0 });
  expect(fitted(tray, 3)).toEqual({ shown: tray.slice(0, 2), more: 2 });
  expect(fitted(tray, 0)).toEqual({ shown: [], more: 4 });
});

test("what must be counted again lies first, then what goes back, then what is replaced", () => {
  const tray = [
    off("filter", { reuse: "never" }),
    off("pan", { reuse: "once" }),
    off("gasket", { reuse: "never", recount_agrees: false }),
    off("long bolts"),
    off("nuts", { reuse: "never" }),
    off("short bolts"),
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
