// The heights of the frame's three bands: vehicle line, step sheet, tray with clock.

/** Heights of the three bands in CSS pixels; they are whole and add up to the window's height. */
export interface Bands {
  vehicleLine: number;
  stepSheet: number;
  tray: number;
}

/**
 * Divides a window of `height` CSS pixels (0 or more) into the three bands, of which the outer ones have the shares
 * `above` and `below`.
 *
 * The outer bands are rounded to whole pixels, so that the lines between the bands are sharp; the step sheet
 * gets the rest, so that nothing is left over and nothing scrolls.
 */
export function bands(height: number, above: number, below: number): Bands {
  const whole = Math.max(0, Math.floor(height));
  const vehicleLine = Math.round(whole * above);
  const tray = Math.round(whole * below);
  return { vehicleLine, stepSheet: whole - vehicleLine - tray, tray };
}
