import { expect, test } from "vitest";
import { CARD, mmOfCard } from "./setup";

test("the screen is measured by a card, and held to what a screen can be", () => {
  // ISO/IEC 7810 ID-1: 85.60 × 53.98 mm, which is also 3.370 × 2.125 inches.
  expect(CARD.width / 25.4).toBeCloseTo(3.37, 2);
  expect(CARD.height / 25.4).toBeCloseTo(2.125, 2);
  // At 160 CSS pixels an inch the card is 539.2 pixels wide.
  expect(mmOfCard(3.37 * 160)).toBeCloseTo(160 / 25.4, 2);
  expect(mmOfCard(10)).toBe(3.5);
  expect(mmOfCard(5000)).toBe(12);
});
