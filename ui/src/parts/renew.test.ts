import { expect, test } from "vitest";
import type { SignView } from "../core/types";
import { notNow, renewable } from "./renew";

function sign(id: string, lapsedBy: number | null, more: Partial<SignView> = {}): SignView {
  const last = { lapsed: lapsedBy === null ? null : { seq: lapsedBy } };
  return { id, valid: lapsedBy === null, last, renew: null, ...more } as unknown as SignView;
}
const refusal = { message: { id: "x", args: {} }, unmet: [] };

test("what one event made lapse is renewed together, the newest event first", () => {
  const groups = renewable([sign("key", 7), sign("locks", 9), sign("people", 7), sign("answer", null)]);
  expect(groups.map((group) => [group.mark.seq, group.open.map((one) => one.id)])).toEqual([
    [9, ["locks"]],
    [7, ["key", "people"]],
  ]);
});

test("what can't be signed now is not renewed but told", () => {
  const signs = [sign("key", 7, { renew: refusal }), sign("people", 7)];
  expect(renewable(signs).flatMap((group) => group.open.map((one) => one.id))).toEqual(["people"]);
  expect(notNow(signs).map((one) => one.id)).toEqual(["key"]);
});

test("what was never signed has not lapsed", () => {
  const never = sign("key", null, { valid: false, last: null });
  expect(renewable([never])).toEqual([]);
  expect(notNow([{ ...never, renew: refusal }])).toEqual([]);
});
