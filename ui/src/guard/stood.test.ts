import { expect, test } from "vitest";
import { REST_MS, type Seen, Stood } from "./stood";

const box = { left: 0, top: 0, right: 100, bottom: 100 };
const here = { x: 50, y: 50 };
const seen = (means: string, more: Partial<Seen> = {}): Seen => ({ means, box, ...more });

/** When a second tap comes after the screen has changed at 10,000. */
const AFTER = [
  [120, false],
  [400, false],
  [600, true],
] as const;

/** A control that has long stood, and is found otherwise at 10,000. */
function changedTo(next: Seen): Stood {
  const stood = new Stood();
  stood.note(0, seen("Guard the area"));
  stood.note(10_000, next);
  return stood;
}

test.each(AFTER)("%i ms after it came, a tap on what was not there counts: %s", (ms, counts) => {
  const stood = new Stood();
  stood.note(10_000, seen("Enter"));
  expect(stood.counts(10_000 + ms, here)).toBe(counts);
});

test.each(AFTER)(
  "%i ms after it came to mean something else, a tap on the same button counts: %s",
  (ms, counts) => {
    expect(changedTo(seen("Open the area again")).counts(10_000 + ms, here)).toBe(counts);
  },
);

test.each(AFTER)("%i ms after it moved under the finger, a tap counts: %s", (ms, counts) => {
  const stood = changedTo(seen("Guard the area", { box: { ...box, top: 200, bottom: 300 } }));
  expect(stood.counts(10_000 + ms, { x: 50, y: 250 })).toBe(counts);
});

test.each(AFTER)("%i ms after what lay over it has gone, a tap and a key count: %s", (ms, counts) => {
  const stood = new Stood();
  stood.note(0, seen("Leave step"));
  stood.note(5_000, seen("Leave step", { box: null }));
  stood.note(10_000, seen("Leave step"));
  expect(stood.counts(10_000 + ms, here)).toBe(counts);
  expect(stood.counts(10_000 + ms, null)).toBe(counts);
});

test.each(AFTER)("%i ms after a command it made was answered, a tap counts: %s", (ms, counts) => {
  const stood = new Stood();
  stood.note(0, seen("Save the record"));
  stood.asked(9_000);
  stood.asked(10_000);
  expect(stood.counts(10_000 + ms, here)).toBe(counts);
});

test("a key of a pad that stays as it is counts however fast it is tapped", () => {
  const stood = new Stood();
  stood.note(0, seen("5"));
  for (const now of [REST_MS, 620, 700, 780]) {
    stood.note(now, seen("5"));
    expect(stood.counts(now, here)).toBe(true);
  }
});

test("a button that moves a little under the finger is still the same", () => {
  const stood = changedTo(seen("Guard the area", { box: { ...box, top: 20, bottom: 120 } }));
  expect(stood.counts(10_120, here)).toBe(true);
  expect(stood.counts(10_120, { x: 50, y: 110 })).toBe(false);
});

test("what meant something else in between does not count, though it means the same again", () => {
  const stood = changedTo(seen("Writing …"));
  stood.note(10_100, seen("Guard the area"));
  expect(stood.counts(10_220, here)).toBe(false);
  expect(stood.counts(10_620, here)).toBe(true);
});

test("what is covered counts for nothing, however long it has been there", () => {
  expect(changedTo(seen("Guard the area", { box: null })).counts(20_000, here)).toBe(false);
});
