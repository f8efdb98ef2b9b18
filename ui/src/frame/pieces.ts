// How the tray draws a kind of part or fastener: by the words of its name. Only a drawing hangs on it; a name without a
// known word gets a neutral form.
import type { TrayView } from "../core/types";

/** The drawings there are. */
export type Piece =
  | "bolt"
  | "nut"
  | "screw"
  | "push_fastener"
  | "clip"
  | "strap"
  | "ring"
  | "gasket"
  | "pan"
  | "filter"
  | "pipe"
  | "hanger"
  | "magnet"
  | "plate"
  | "bracket"
  | "solenoid"
  | "connector"
  | "piece";

const BY_WORD: Record<string, Piece> = {
  bolt: "bolt",
  stud: "bolt",
  plug: "bolt",
  nut: "nut",
  screw: "screw",
  fastener: "push_fastener",
  clip: "clip",
  clamp: "clip",
  strap: "strap",
  tie: "strap",
  washer: "ring",
  ring: "ring",
  seal: "ring",
  "o-ring": "ring",
  gasket: "gasket",
  pan: "pan",
  filter: "filter",
  pipe: "pipe",
  hose: "pipe",
  line: "pipe",
  hanger: "hanger",
  mount: "hanger",
  magnet: "magnet",
  plate: "plate",
  cover: "plate",
  shield: "plate",
  bracket: "bracket",
  solenoid: "solenoid",
  valve: "solenoid",
  connector: "connector",
};

/** Words after which a name says whose piece it is, not what it is. */
const BELONGS = /\s+(?:of|at|for|in|on|under|behind)\s+/;

/** The drawing for an item: by the head of its name, the last known word before "of", "at" and the like. */
export function pieceOf(item: Pick<TrayView, "name">): Piece {
  const head = item.name.toLowerCase().split(BELONGS)[0] ?? "";
  for (const word of head.split(/[\s,]+/).reverse()) {
    const found = BY_WORD[word] ?? BY_WORD[word.replace(/s$/, "")];
    if (found) return found;
  }
  return "piece";
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
  const kinds = [...new Set(Object.values(BY_WORD)), "piece"];
  const place = (item: TrayView) =>
    kinds.indexOf(pieceOf(item)) +
    (item.reuse === "never" ? kinds.length : 0) -
    (item.recount_agrees ? 0 : 2 * kinds.length);
  return [...tray].sort((a, b) => place(a) - place(b));
}
