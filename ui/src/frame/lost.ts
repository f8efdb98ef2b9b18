// What a move would make lapse, in words. Which it is stands in the view.
import type { JobView, MoveView } from "../core/types";

/** What no longer stands after a move. */
export interface Lost {
  /** Texts of the sign-offs that lapse. */
  signs: string[];
  /** Names of what is no longer known. */
  known: string[];
}

/** What a move would make lapse and no longer known, in the view's words. */
export function lostBy(move: MoveView, view: JobView): Lost {
  const text = (id: string) => view.signs.find((sign) => sign.id === id)?.text ?? id;
  const name = (id: string) => view.gates.find((gate) => gate.id === id)?.name ?? id;
  return { signs: move.lapses.map(text), known: move.forgets.map(name) };
}
