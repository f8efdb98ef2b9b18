// The shop's people and tools while they are typed. Whether a tool may be used for a torque is decided by the core.
import type { Tool } from "../core/types";

/** The glass is taken for no finer and no coarser than this, in CSS pixels a millimetre. */
export const MM = { least: 3.5, most: 12 };

/** Width of a bank card in millimetres: ISO/IEC 7810, ID-1. */
export const CARD = { width: 85.6, height: 53.98 };

/** CSS pixels a millimetre when the card is as wide as the outline of `width` CSS pixels, held to what a glass can be. */
export function mmOfCard(width: number): number {
  return Math.min(MM.most, Math.max(MM.least, width / CARD.width));
}

/** A tool that is being typed. */
export const NO_TOOL: Tool = { name: "", min: "", max: "", unit: "N·m", calibration_due: "" };

/** Units that torque tools are marked in. */
export const TOOL_UNITS = ["N·m", "lbf·ft", "lbf·in"];

/** The fields of a tool in which something is missing or which can't be read. */
export function missingInTool(tool: Tool): ("name" | "range" | "due")[] {
  const bad: ("name" | "range" | "due")[] = [];
  if (tool.name.trim() === "") bad.push("name");
  if (!isNumber(tool.min) || !isNumber(tool.max)) bad.push("range");
  if (!isDay(tool.calibration_due)) bad.push("due");
  return bad;
}

/** `text` is a day of the calendar, as `2027-03-01`. */
export function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)
  );
}

/** `text` is a number as it is typed, with comma or point. */
function isNumber(text: string): boolean {
  return /^\d+([.,]\d+)?$/.test(text.trim());
}

/** A list without the one at a place. */
export function without<One>(list: One[], at: number): One[] {
  return list.filter((_, place) => place !== at);
}

/** A list with one put back at its place. */
export function putBack<One>(list: One[], at: number, one: One): One[] {
  return [...list.slice(0, at), one, ...list.slice(at)];
}
