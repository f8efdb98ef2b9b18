// What a vehicle action would make lapse, in words. Which it is stands in the view.
import type { JobView, VehicleActionView } from "../core/types";

/** What no longer stands after a vehicle action. */
export interface Lost {
  /** Texts of the sign-offs that lapse. */
  signs: string[];
  /** Names of what is no longer known. */
  known: string[];
}

/** What a vehicle action would make lapse and no longer known, in the view's words. */
export function lostBy(action: VehicleActionView, view: JobView): Lost {
  const text = (id: string) => view.signs.find((sign) => sign.id === id)?.text ?? id;
  const name = (id: string) => view.gates.find((gate) => gate.id === id)?.name ?? id;
  return { signs: action.lapses.map(text), known: action.forgets.map(name) };
}
