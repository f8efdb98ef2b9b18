import { expect, test } from "vitest";
import type { EntryView, EstimateLines } from "../../core/types";
import { asValue, draftOf, emptyDraft, isBlank, readDraft, typedOf, valueText } from "../value";
import { isTyped, type TypedEntry } from ".";
import { answered } from "./authorization";
import { otherWays } from "./decision";
import { BLANK, LISTS, linesOf, withLines } from "./estimate";
import type { EntryOf, KindId } from "./kind";
import { tapped } from "./several";

/** An entry of every kind. */
const ASKS: { [Id in KindId]: EntryOf<Id>["ask"] } = {
  reading: { reading: { unit: "V", at_most: null, at_least: null, within: null } },
  level: { level: { chart: "chart", gain: null, added: null, may_give_up: false } },
  coil: { coil: { limits: "coil", at: null } },
  coils: { coils: { of: "coils", at: null, some: false } },
  cool_down: { cool_down: { limit: "touch", place: "joint", heated_by: {} } },
  balance: { balance: { drained: [], added: [], density: "density", unseen: "unseen", capacity: null } },
  count: { count: { of: { bolts: 14 } } },
  torque: { torque: { spec: "pan", of: [], guarded: false, exceptions: [] } },
  photo: { photo: { of: "the pan", with_scale: false, first_page: false } },
  choice: { choice: { options: [{ class: "clear", label: "clear" }], hands_did: false } },
  several: {
    several: {
      options: [
        { id: "paste", label: "fine gray paste" },
        { id: "chips", label: "chips" },
      ],
      none: "clean",
    },
  },
  decision: {
    decision: {
      options: [
        { class: "carry_on", label: "carry on" },
        { class: "stop_and_call", label: "stop and call" },
      ],
      against: [{ class: "carry_on", with_second_person: true }],
    },
  },
  scan: { scan: { of: "vin" } },
  timer: { timer: { at_least: "wait" } },
  note: { note: { words: [], words_of: null } },
  estimate: { estimate: { parts: ["filter"], labor: [], may_turn_up: [] } },
  authorization: { authorization: { for: "ask.estimate", given_by: ["owner"] } },
};

const shared = {
  limits: [],
  units: ["V"],
  temperature_units: ["°C"],
  torque: null,
  overload: [],
  coils: ["shift 1", "shift 2"],
  decision: null,
  value: null,
};
const entries = Object.values(ASKS).map((ask) => ({ ...shared, ask }) as unknown as TypedEntry);

test.each(Object.keys(ASKS).map((id, at) => [id, at] as const))(
  "a %s begins empty and goes on from what was kept",
  (id, at) => {
    const entry = entries[at];
    if (!entry) throw new Error("there is an entry of every kind");
    const begun = emptyDraft(entry);
    expect(Object.keys(begun)).toEqual([id]);
    expect(isBlank(entry, begun)).toBe(true);
    expect(readDraft(entry, JSON.stringify(begun))).toEqual(begun);
    expect(typedOf(entry, draftOf(entry, typedOf(entry, begun)))).toEqual(typedOf(entry, begun));
    const { value, missing } = asValue(entry, begun);
    expect(value === null).toBe(missing !== null);
    expect(missing ?? "").not.toMatch(/^entry-/);
  },
);

test("no kind takes the draft of another, nor what is no draft", () => {
  for (const entry of entries) {
    for (const other of entries.filter((one) => one !== entry))
      expect(readDraft(entry, JSON.stringify(emptyDraft(other)))).toBeNull();
    const [id] = Object.keys(entry.ask);
    for (const typed of [5, "5", [], undefined])
      expect(readDraft(entry, JSON.stringify({ [id ?? ""]: typed }))).toBeNull();
  }
});

test("a signature is not typed", () => {
  const view = { ...shared, ask: { sign_off: { sign: "safe" } } } as unknown as EntryView;
  expect([isTyped(view), entries.every((entry) => isTyped(entry as unknown as EntryView))]).toEqual([
    false,
    true,
  ]);
});

test("each tap puts one finding in or takes it out, and none of them is an answer of its own", () => {
  const entry = entries[Object.keys(ASKS).indexOf("several")];
  if (!entry) throw new Error("there is an entry of every kind");
  const two = tapped(tapped({ found: [], none: true }, "chips"), "paste");
  expect(two).toEqual({ found: ["chips", "paste"], none: false });
  expect(asValue(entry, { several: two }).value).toEqual({ several: { found: ["chips", "paste"] } });
  expect(valueText(entry, { several: { found: ["chips", "paste"] } }, [])).toBe("fine gray paste, chips");
  expect(tapped(two, "chips")).toEqual({ found: ["paste"], none: false });
  expect(asValue(entry, { several: { found: [], none: true } }).value).toEqual({ several: { found: [] } });
  expect(asValue(entry, { several: { found: [], none: false } }).value).toBeNull();
});

test("a decision is taken without a reason, and gone against only to what the checklist lets through", () => {
  const entry = entries[Object.keys(ASKS).indexOf("decision")];
  if (!entry) throw new Error("there is an entry of every kind");
  expect(asValue(entry, { decision: { class: "stop_and_call", against: null } }).value).toEqual({
    decision: { class: "stop_and_call" },
  });
  const against = { reason: "known on this vehicle", by: "m" };
  const value = { decision: { class: "carry_on", against } };
  expect(asValue(entry, value).value).toEqual(value);
  expect(valueText(entry, value, [])).toBe("carry on");
  const other = (table: string) => otherWays(ASKS.decision.decision, table).map((one) => one.class);
  expect([other("stop_and_call"), other("carry_on")]).toEqual([["carry_on"], []]);
});

test("each list of an estimate keeps its lines under its own names", () => {
  const empty: EstimateLines = { currency: "USD", parts: [], labor: [], may_turn_up: [] };
  const filled = LISTS.reduce(
    (value, list) => withLines(value, list, [{ ...BLANK, what: list, price: "12,50" }]),
    empty,
  );
  expect(filled).toEqual({
    currency: "USD",
    parts: [{ name: "parts", number: "", quantity: "", price: "12,50" }],
    labor: [{ what: "labor", hours: "", rate: "12,50" }],
    may_turn_up: [{ what: "may_turn_up", up_to: "12,50" }],
  });
  const entry = entries[Object.keys(ASKS).indexOf("estimate")];
  if (!entry) throw new Error("there is an entry of every kind");
  expect(asValue(entry, { estimate: filled }).value).toMatchObject({
    estimate: { parts: [{ quantity: "1" }] },
  });
  for (const list of LISTS) expect(withLines(filled, list, linesOf(filled, list))).toEqual(filled);
});

test("a yes takes what the estimate comes to, unless an amount is typed", () => {
  const blank = {
    answer: null,
    amount: "",
    currency: "EUR",
    given_by: "",
    means: null,
    given_at: "",
  };
  const asked = { estimate: { sum: { value: "640.00", unit: "USD" }, limit: null } };
  expect(answered(blank, "agreed", asked)).toMatchObject({ amount: "640.00", currency: "USD" });
  expect(answered({ ...blank, amount: "700" }, "agreed", asked).amount).toBe("700");
  expect(answered(blank, "declined", asked).amount).toBe("");
  expect(answered(blank, "agreed", { estimate: null })).toEqual({ ...blank, answer: "agreed" });
});
