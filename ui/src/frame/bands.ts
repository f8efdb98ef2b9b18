// The heights of the frame's three bands: vehicle line, step sheet, tray with clock.

/** Heights of the three bands in CSS pixels; they are whole and add up to the window's height. */
export interface Bands {
  vehicleLine: number;
  stepSheet: number;
  tray: number;
}

/** Share of the window's height that the vehicle line takes above, and the tray below. */
const OUTER_SHARE = 0.16;

/**
 * Divides a window of `height` CSS pixels (0 or more) into the three bands: 16 %, 68 % and 16 %.
 *
 * The outer bands are rounded to whole pixels, so that the lines between the bands are sharp; the step sheet
 * gets the rest, so that nothing is left over and nothing scrolls.
 */
export function bands(height: number): Bands {
  const whole = Math.max(0, Math.floor(height));
  const outer = Math.round(whole * OUTER_SHARE);
  return { vehicleLine: outer, stepSheet: whole - 2 * outer, tray: outer };
}
