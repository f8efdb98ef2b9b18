// The shop's lists, and how the glass is measured.

/** The glass is taken for no finer and no coarser than this, in CSS pixels a millimetre. */
export const MM = { least: 3.5, most: 12 };

/** Width of a bank card in millimetres: ISO/IEC 7810, ID-1. */
export const CARD = { width: 85.6, height: 53.98 };

/** CSS pixels a millimetre when the card is as wide as the outline of `width` CSS pixels, held to what a glass can be. */
export function mmOfCard(width: number): number {
  return Math.min(MM.most, Math.max(MM.least, width / CARD.width));
}
