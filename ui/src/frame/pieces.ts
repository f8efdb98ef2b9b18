// How the tray draws a kind of part or fastener. Which drawing it is stands in the checklist; one without has a neutral form.
import type { Piece, TrayView } from "../core/types";

/** The form that fits anything. */
const NEUTRAL = "any";

/** The drawings there are, as lines on a field of 40, in the order in which they are laid out. */
export const LINES: Record<Piece | typeof NEUTRAL, string> = {
  bolt: "M12 6H28V14H12ZM16 14V35L20 37L24 35V14M16 20L24 23M16 26L24 29",
  nut: "M12 6H28L36 20L28 34H12L4 20ZM27 20A7 7 0 1 1 13 20A7 7 0 1 1 27 20",
  screw: "M9 12Q20 2 31 12ZM17 12V28L20 36L23 28V12M17 18L23 21M17 24L23 27M20 7V10",
  push_fastener: "M8 6H32V11H8ZM20 11V17M14 17H26L24 26L20 36L16 26ZM15.5 22H24.5",
  clip: "M10 36V18A10 11 0 0 1 30 18V36M15 36V19A5 6 0 0 1 25 19V36M10 36H15M25 36H30",
  strap: "M26 8H36V18H26ZM26 13H14A10 11 0 0 0 14 34H22A9 9 0 0 0 31 26V18",
  ring: "M35 20A15 15 0 1 1 5 20A15 15 0 1 1 35 20M28 20A8 8 0 1 1 12 20A8 8 0 1 1 28 20",
  gasket: "M4 9H36V31H4ZM11 15H29V25H11ZM7.5 12h0M20 12h0M32.5 12h0M7.5 28h0M20 28h0M32.5 28h0",
  pan: "M3 12H37M7 12L11 30H29L33 12M20 30V34",
  filter: "M5 14H29V32H5ZM29 18H36V10M5 20H29M5 26H29M11 14V32M17 14V32M23 14V32",
  pipe: "M3 26C9 8 17 10 20 19C23 28 31 30 37 12M3 32C13 20 14 16 16 22C22 38 34 34 37 20",
  hanger:
    "M20 4A12 16 0 1 1 20 36A12 16 0 1 1 20 4M24 13A4 4 0 1 1 16 13A4 4 0 1 1 24 13M24 27A4 4 0 1 1 16 27A4 4 0 1 1 24 27",
  magnet: "M6 13H34V27H6ZM20 13V27M10 8V4M16 9V5M24 9V5M30 8V4M10 32V36M16 31V35M24 31V35M30 32V36",
  plate: "M5 10L30 5L36 28L10 35ZM10 14h0M29 9.5h0M31 26h0M13 30.5h0",
  bracket: "M7 5H15V27H35V35H7ZM11 12h0M28 31h0",
  solenoid: "M6 12H24V30H6ZM24 17H36V25H24M28 17V25M32 17V25M11 12V7H19V12",
  connector: "M5 12H22V28H5ZM22 16H30V24H22M30 18H37M30 22H37M9 12V8H18V12",
  any: "M20 4L35 12V28L20 36L5 28V12ZM5 12L20 20L35 12M20 20V36",
};

const ORDER = Object.keys(LINES);

/** The drawing of an item. */
function pieceOf(item: TrayView): keyof typeof LINES {
  return item.draws ?? NEUTRAL;
}

/** The lines of an item's drawing. */
export function linesOf(item: TrayView): string {
  return LINES[pieceOf(item)];
}

/** What of the tray fits into `cells`; where not all does, the last cell says how many more kinds there are. */
export function fitted(tray: TrayView[], cells: number): { shown: TrayView[]; more: number } {
  if (tray.length <= cells) return { shown: tray, more: 0 };
  const shown = tray.slice(0, Math.max(0, cells - 1));
  return { shown, more: tray.length - shown.length };
}

/**
 * The tray in the order it is laid out: what must be counted again, then what goes back, then what is replaced; each by its
 * drawing.
 */
export function laidOut(tray: TrayView[]): TrayView[] {
  const place = (item: TrayView) =>
    ORDER.indexOf(pieceOf(item)) +
    (item.reuse === "never" ? ORDER.length : 0) -
    (item.recount_agrees ? 0 : 2 * ORDER.length);
  return [...tray].sort((a, b) => place(a) - place(b));
}
