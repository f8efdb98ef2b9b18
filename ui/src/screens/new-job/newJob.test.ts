import { expect, test } from "vitest";
import type { ChecklistOffer } from "../../core/types";
import { answered, chosen, conditions, EMPTY, provedBefore, tryAs } from "./newJob";

const key = {
  condition: "key",
  name: "key",
  answers: [
    { value: "in_car", says: "in car" },
    { value: "secured", says: "secured" },
  ],
};
const offer = (id: string, ...sheets: string[]): ChecklistOffer => ({
  hash: `hash of ${id}`,
  id,
  title: id,
  revision: 1,
  demo: true,
  steps: 3,
  proved: false,
  questions: [key],
  sheets: sheets.map((sheet) => ({
    id: sheet,
    title: sheet,
    revision: 1,
    demo: true,
    proved: false,
    shop_lacks: [],
  })),
});

test("the first checklist and its first sheet stand until others are chosen", () => {
  const offers = [offer("pan", "six"), offer("coil", "five", "eight")];
  expect(chosen(EMPTY, offers)?.checklist.id).toBe("pan");
  expect(chosen({ ...EMPTY, checklist: "hash of coil", sheet: "eight" }, offers)?.sheet?.id).toBe("eight");
  expect(chosen({ ...EMPTY, checklist: "hash of coil", sheet: "six" }, offers)?.sheet?.id).toBe("five");
  expect(chosen(EMPTY, [])).toBeNull();
  expect(chosen(EMPTY, [offer("pan")])?.sheet).toBeNull();
});

test("the vehicle comes in as the first answer says unless another is given", () => {
  expect(answered(EMPTY, key)).toBe("in_car");
  expect(conditions({ ...EMPTY, conditions: { key: "secured", gone: "x" } }, offer("pan"))).toEqual({
    key: "secured",
  });
  expect(answered({ ...EMPTY, conditions: { key: "no such" } }, key)).toBe("in_car");
});

test("the same job tried again keeps its id, a changed one gets a new one", () => {
  const before = { ...EMPTY, tried: { what: "a", request: "1" } };
  expect(tryAs(before, "a", () => "2").request).toBe("1");
  expect(tryAs(before, "b", () => "2").request).toBe("2");
});

test("where a checklist is not proved, its revision that is proved is pointed at", () => {
  const now = { ...offer("pan"), revision: 3 };
  const before = { ...offer("pan"), hash: "hash of revision 2", revision: 2, proved: true };
  expect(provedBefore(now, [now, { ...offer("coil"), proved: true }, before])?.revision).toBe(2);
  expect(provedBefore(now, [now, { ...before, proved: false }])).toBeNull();
  expect(provedBefore(before, [now, before])).toBeNull();
});
