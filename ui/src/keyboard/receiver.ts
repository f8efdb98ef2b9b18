// Where a number that an instrument types goes to: the field that the keypad on top types at.
import { type Shown, unitMeant } from "./burst";

/** A place that takes numbers. */
export interface Receiver {
  /** The units that it takes, and the one that holds. */
  units: () => string[];
  /** Puts a number in place of what stands there. */
  put: (number: string) => void;
  setUnit: (unit: string) => void;
  /** Nothing is laid over it. */
  isOpen: () => boolean;
}

const receivers: Receiver[] = [];

/** Takes numbers from now on; answers how to end it. */
export function receive(receiver: Receiver): () => void {
  receivers.push(receiver);
  return () => {
    receivers.splice(receivers.indexOf(receiver), 1);
  };
}

/** The place that takes numbers now; nothing where none is open. */
export function receiver(): Receiver | null {
  return receivers.filter((one) => one.isOpen()).at(-1) ?? null;
}

/**
 * Puts what an instrument shows where it belongs. Answers the unit that is not known there: then it stays beside the
 * number, so that the number can't be taken for one in the unit that holds.
 */
export function land({ number, unit }: Shown, { units, put, setUnit }: Receiver): string | null {
  const meant = unit === "" ? "" : unitMeant(unit, units());
  // An overload is one in any unit.
  const isUnknown = meant === null && number !== "OL";
  put(isUnknown ? `${number} ${unit}` : number);
  if (meant) setUnit(meant);
  return isUnknown ? unit : null;
}
