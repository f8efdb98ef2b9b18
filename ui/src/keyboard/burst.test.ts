import { expect, test } from "vitest";
import { Burst, GAP_MS, shownBy, unitMeant } from "./burst";

/** What a burst holds when Enter has come; null where Enter did not go on with it. */
function typed(keys: string[], apart: number): string | null {
  const burst = new Burst();
  const went = keys.map((key, at) => burst.goesOn(key, 1_000 + at * apart));
  return went.at(-1) ? burst.take() : null;
}

test("what comes faster than a hand types, and Enter, is an instrument's", () => {
  expect(typed([..."12.6 V", "Enter"], 8)).toBe("12.6 V");
  expect(typed([..."6.9Ω", "Enter"], GAP_MS)).toBe("6.9Ω");
  expect(typed([..."12", "Shift", "V", "Enter"], 20)).toBe("12V");
});

test("what a hand types is none, nor is Enter alone", () => {
  expect(typed([..."12.6", "Enter"], 90)).toBeNull();
  expect(typed(["Enter"], 8)).toBeNull();
  expect(typed(["Enter", "Enter"], 8)).toBeNull();
});

test("what was typed by hand before is no part of it", () => {
  const burst = new Burst();
  burst.goesOn("9", 0);
  for (const [at, key] of [..."7.1"].entries()) burst.goesOn(key, 500 + at * 10);
  expect(burst.goesOn("Enter", 540)).toBe(true);
  expect(burst.take()).toBe("7.1");
  expect(burst.take()).toBe("");
});

test.each([
  ["6.9Ω", "6.9", "Ω"],
  ["12.6 V", "12.6", "V"],
  ["+012,60 VDC", "012,60", "VDC"],
  ["-18.5 °C", "-18.5", "°C"],
  ["− 0.3V", "−0.3", "V"],
  [".5 kΩ", ".5", "kΩ"],
  ["9.0N.m", "9.0", "N.m"],
  ["7", "7", ""],
  ["OL", "OL", ""],
  ["O.L", "OL", ""],
  ["OL Ω", "OL", "Ω"],
  ["ovld kΩ", "OL", "kΩ"],
])("%s is read as %s with the unit %s", (text, number, unit) => {
  expect(shownBy(text)).toEqual({ number, unit });
});

test.each(["", "V", "abc", "OLD", "-", "P0750"])('"%s" is no number', (text) => {
  expect(shownBy(text)).toBeNull();
});

test("units are known however they are written", () => {
  const torque = ["N·m", "lbf·ft", "lbf·in"];
  expect(["Nm", "N-m", "N.m", "N m", "NM"].map((unit) => unitMeant(unit, torque))).toEqual(
    Array(5).fill("N·m"),
  );
  expect(unitMeant("ft-lb", torque)).toBe("lbf·ft");
  expect(unitMeant("in.lbs", torque)).toBe("lbf·in");
  // The ohm sign and the Greek letter look alike.
  expect(unitMeant("\u2126", ["\u03a9", "kΩ"])).toBe("\u03a9");
  expect(unitMeant("kohm", ["Ω", "kΩ"])).toBe("kΩ");
  expect(unitMeant("C", ["°C", "°F"])).toBe("°C");
  expect(unitMeant("V DC", ["V"])).toBe("V");
  expect(unitMeant("deg", ["°"])).toBe("°");
});

test("a unit that is not asked for, or of another size, is none of them", () => {
  expect(unitMeant("bar", ["N·m"])).toBeNull();
  expect(unitMeant("mΩ", ["Ω", "kΩ"])).toBeNull();
  expect(unitMeant("mV", ["V"])).toBeNull();
  expect(unitMeant("VAC", ["V"])).toBeNull();
  expect(unitMeant("V", [""])).toBeNull();
});
