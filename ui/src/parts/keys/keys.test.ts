import { expect, test } from "vitest";
import { backspace, goesBelowZero, nextUnit, type Typed, turnSign, typeText, withWord } from "./keys";

const typed = (text: string): Typed => ({ text, fresh: false });

test("digits stand one behind the other, with comma or point as typed", () => {
  const keys = ["6", ",", "2"].reduce(typeText, typed(""));
  expect(keys.text).toBe("6,2");
  expect(typeText(typed("6."), "2").text).toBe("6.2");
});

test("letters and a second comma are kept for the core to refuse, not swallowed", () => {
  expect(typeText(typed("6,2"), ",").text).toBe("6,2,");
  expect(typeText(typed("6"), "x").text).toBe("6x");
});

test("the first key in a field takes the place of the old value, delete mends it", () => {
  expect(typeText({ text: "63", fresh: true }, "4")).toEqual({ text: "4", fresh: false });
  expect(backspace({ text: "63", fresh: true })).toEqual({ text: "6", fresh: false });
  expect(backspace(typed("")).text).toBe("");
});

test("the minus is put in front and taken away again", () => {
  expect(turnSign(typed("12")).text).toBe("-12");
  expect(turnSign(typed("-12")).text).toBe("12");
  expect(turnSign(typed("−12")).text).toBe("12");
});

test("a minus is offered for temperatures and volts only", () => {
  expect(["°C", "°F", "V", "Ω", "mm", "N·m", "rpm"].filter(goesBelowZero)).toEqual(["°C", "°F", "V"]);
});

test("the unit key goes through the units and begins again", () => {
  expect(nextUnit(["N·m", "lbf·ft", "lbf·in"], "lbf·ft")).toBe("lbf·in");
  expect(nextUnit(["N·m", "lbf·ft", "lbf·in"], "lbf·in")).toBe("N·m");
  expect(nextUnit(["V"], "V")).toBe("V");
  expect(nextUnit([], "V")).toBe("V");
});

test("a tapped word is put behind what was written", () => {
  expect(withWord("", "every drive")).toBe("every drive");
  expect(withWord("once warm", "every drive")).toBe("once warm, every drive");
  expect(withWord("Once warm. ", "every drive")).toBe("Once warm. every drive");
});
