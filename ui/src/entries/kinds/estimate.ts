// Parts and labor of an estimate, a line each, and what may turn up.
import type { EstimateLines } from "../../core/types";
import EstimatePad from "../pads/EstimatePad.svelte";
import { kind } from "./kind";
import { hasTexts } from "./shape";

/** The lists of an estimate. */
export type ListId = "parts" | "labor" | "may_turn_up";
/** A field of a line that is typed on the keypad. */
export type Field = "quantity" | "price";

/** A line as the pad shows it, whatever its list calls the fields. */
export interface Line {
  what: string;
  number: string;
  /** How many, or hours; what may turn up has none. */
  quantity: string;
  price: string;
}

/** How many of a part are wanted where nobody types it. */
export const MOSTLY = "1";

export const LISTS: ListId[] = ["parts", "labor", "may_turn_up"];

export const estimate = kind<"estimate", EstimateLines>({
  pad: EstimatePad,
  empty: (entry) => ({ currency: entry.units[0] ?? "", parts: [], labor: [], may_turn_up: [] }),
  fits: (found): found is EstimateLines =>
    hasTexts(found, "currency") && LISTS.every((list) => Array.isArray(found[list])),
  isBlank: (typed) => LISTS.every((list) => typed[list].length === 0),
  value: (typed) => ({
    value: { ...typed, parts: typed.parts.map((part) => ({ ...part, quantity: part.quantity || MOSTLY })) },
  }),
  text: (value) =>
    LISTS.flatMap((list) => linesOf(value, list))
      .map(({ what }) => what)
      .join(", "),
  isToldBySentence: () => true,
});

/** The lines of a list. */
export function linesOf(value: EstimateLines, list: ListId): Line[] {
  if (list === "parts")
    return value.parts.map(({ name, number, quantity, price }) => ({
      what: name,
      number: number ?? "",
      quantity,
      price: price ?? "",
    }));
  if (list === "labor")
    return value.labor.map(({ what, hours, rate }) => ({
      what,
      number: "",
      quantity: hours,
      price: rate ?? "",
    }));
  return value.may_turn_up.map(({ what, up_to }) => ({ what, number: "", quantity: "", price: up_to }));
}

/** The estimate with other lines in a list. */
export function withLines(value: EstimateLines, list: ListId, lines: Line[]): EstimateLines {
  if (list === "parts") {
    const parts = lines.map(({ what, number, quantity, price }) => ({ name: what, number, quantity, price }));
    return { ...value, parts };
  }
  if (list === "labor")
    return {
      ...value,
      labor: lines.map(({ what, quantity, price }) => ({ what, hours: quantity, rate: price })),
    };
  return { ...value, may_turn_up: lines.map(({ what, price }) => ({ what, up_to: price })) };
}

/** A new line. */
export const BLANK: Line = { what: "", number: "", quantity: "", price: "" };
