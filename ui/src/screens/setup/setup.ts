// The shop's lists, and how the screen is measured.

/** The screen is taken for no finer and no coarser than this, in CSS pixels a millimeter. */
export const MM = { least: 3.5, most: 12 };

/** Width of a bank card in millimeters: ISO/IEC 7810, ID-1. */
export const CARD = { width: 85.6, height: 53.98 };

/** CSS pixels a millimeter when the card is as wide as the outline of `width` CSS pixels, held to what a screen can be. */
export function mmOfCard(width: number): number {
  return Math.min(MM.most, Math.max(MM.least, width / CARD.width));
}
