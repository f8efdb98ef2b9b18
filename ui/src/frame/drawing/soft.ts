// How long a part of a drawing takes to come and go.

/** Milliseconds of a soft change; none for those who asked the device for less motion. */
export function soft(): number {
  return window.matchMedia("(prefers-reduced-motion: reduce)").matches ? 0 : 280;
}
