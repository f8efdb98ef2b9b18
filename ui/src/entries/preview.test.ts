import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { EntryValue, Preview } from "../core/types";
import { LivePreview } from "./preview.svelte";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const volts = (value: string): EntryValue => ({ reading: { value, unit: "V" } });
const said = (text: string): Preview => ({ class: text, not_yet: false, said: [], other: null });

/** A core that answers when it is told to. */
function slowCore() {
  const open = new Map<string, (preview: Preview) => void>();
  const ask = (value: EntryValue) =>
    new Promise<Preview>((answer) => {
      if ("reading" in value) open.set(value.reading.value, answer);
    });
  return { ask, open };
}

test("the core is asked once for what is typed in one go", () => {
  const ask = vi.fn(async () => said("inside"));
  const live = new LivePreview(ask);
  for (const text of ["1", "12", "12,", "12,6"]) live.about(volts(text));
  vi.advanceTimersByTime(1000);
  expect(ask).toHaveBeenCalledExactlyOnceWith(volts("12,6"));
});

test("a late answer for an older text is dropped", async () => {
  const { ask, open } = slowCore();
  const live = new LivePreview(ask);
  live.about(volts("12"));
  await vi.advanceTimersByTimeAsync(200);
  live.about(volts("12,6"));
  await vi.advanceTimersByTimeAsync(200);
  open.get("12,6")?.(said("newer"));
  await vi.advanceTimersByTimeAsync(0);
  open.get("12")?.(said("older"));
  await vi.advanceTimersByTimeAsync(0);
  expect(live.answer?.class).toBe("newer");
});

test("an answer for an older text is dropped while the newer is still to be asked", async () => {
  const { ask, open } = slowCore();
  const live = new LivePreview(ask);
  live.about(volts("12"));
  await vi.advanceTimersByTimeAsync(200);
  live.about(volts("12,6"));
  open.get("12")?.(said("older"));
  await vi.advanceTimersByTimeAsync(50);
  expect(live.answer).toBeNull();
});

test("a core that can't be asked is told, and forgotten with the next answer", async () => {
  const ask = vi.fn<(value: EntryValue) => Promise<Preview>>();
  ask.mockRejectedValueOnce({ kind: "store", message: "The store is gone." });
  ask.mockResolvedValueOnce(said("inside"));
  const live = new LivePreview(ask);
  live.about(volts("12"));
  await vi.advanceTimersByTimeAsync(200);
  expect(live.failed).toBe("The store is gone.");
  live.about(volts("12,6"));
  await vi.advanceTimersByTimeAsync(200);
  expect([live.failed, live.answer?.class]).toEqual([null, "inside"]);
});
