import { afterEach, expect, test } from "vitest";
import { land, type Receiver, receive, receiver } from "./receiver";

/** A place that takes ohms, and what has come into it. */
function place(units = ["Ω", "kΩ"], isOpen = true) {
  const came: string[] = [];
  const at: Receiver = {
    units: () => units,
    put: (number) => came.push(number),
    setUnit: (unit) => came.push(`in ${unit}`),
    isOpen: () => isOpen,
  };
  return { at, came };
}

let ends: (() => void)[] = [];
afterEach(() => {
  for (const end of ends) end();
  ends = [];
});

test("a number lands with its unit", () => {
  const { at, came } = place();
  expect(land({ number: "6.9", unit: "kohm" }, at)).toBeNull();
  expect(came).toEqual(["6.9", "in kΩ"]);
});

test("a number without a unit is in the one that holds", () => {
  const { at, came } = place();
  expect(land({ number: "6.9", unit: "" }, at)).toBeNull();
  expect(came).toEqual(["6.9"]);
});

test("a unit that is not known stays beside the number and is answered", () => {
  const { at, came } = place();
  expect(land({ number: "6.9", unit: "mΩ" }, at)).toBe("mΩ");
  expect(came).toEqual(["6.9 mΩ"]);
});

test("an overload is one in any unit", () => {
  const { at, came } = place();
  expect(land({ number: "OL", unit: "MΩ" }, at)).toBeNull();
  expect(came).toEqual(["OL"]);
});

test("the place that came up last and is not covered takes the number", () => {
  expect(receiver()).toBeNull();
  const [first, second, covered] = [place(), place(), place([], false)];
  ends = [first, second, covered].map(({ at }) => receive(at));
  expect(receiver()).toBe(second.at);
  ends[1]?.();
  ends[1] = () => undefined;
  expect(receiver()).toBe(first.at);
});
