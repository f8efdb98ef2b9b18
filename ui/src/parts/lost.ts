// What a move would make lapse, in words. Which it is stands in the view.
import type { JobView, VehicleActionView } from "../core/types";
import { say } from "../words/say";

/** What no longer stands after a move. */
export interface Lost {
  /** Texts of the sign-offs that lapse. */
  signs: string[];
  /** Names of what is no longer known. */
  known: string[];
}

/** What a move would make lapse and no longer known, in the view's words. */
export function lostBy(move: VehicleActionView, view: JobView): Lost {
  const text = (id: string) => view.signs.find((sign) => sign.id === id)?.text ?? id;
  const name = (id: string) => view.gates.find((gate) => gate.id === id)?.name ?? id;
  return { signs: move.lapses.map(text), known: move.forgets.map(name) };
}

/** What must be signed or checked again after it, in words. */
export function saysLost(lost: Lost): string[] {
  return [
    ...lost.signs.map((what) => say("frame-vehicle-actions-lapses", { what })),
    ...(lost.known.length > 0 ? [say("frame-vehicle-actions-forgets", { what: lost.known.join(", ") })] : []),
  ];
}
