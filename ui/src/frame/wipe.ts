// How long touch is off while the screen is cleaned, and what is swallowed meanwhile.

/** Seconds for which touch and keys are frozen. */
export const WIPE_SECONDS = 15;

/** Every event by which a finger, a pointer or a key could do something. */
export const FROZEN_EVENTS = [
  "pointerdown",
  "pointermove",
  "pointerup",
  "touchstart",
  "touchmove",
  "touchend",
  "mousedown",
  "mouseup",
  "click",
  "dblclick",
  "contextmenu",
  "wheel",
  "keydown",
  "keypress",
  "keyup",
  "beforeinput",
  "dragstart",
] as const;

/** Whole seconds that are still frozen, from `WIPE_SECONDS` down to 0; both times in milliseconds of one clock. */
export function secondsLeft(until: number, now: number): number {
  return Math.min(WIPE_SECONDS, Math.max(0, Math.ceil((until - now) / 1000)));
}
