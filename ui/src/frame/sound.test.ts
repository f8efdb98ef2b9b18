import { afterEach, expect, test, vi } from "vitest";
import { SHAKES, sound, TONES } from "./sound";

/** Every tone that is begun, with its start in seconds. */
function playedTones() {
  const tones: { hertz: number; start: number }[] = [];
  class Player {
    currentTime = 1;
    destination = {};
    close = () => Promise.resolve();
    createGain() {
      const gain = { setValueAtTime: () => undefined, linearRampToValueAtTime: () => undefined };
      return { gain, connect: (to: unknown) => to };
    }
    createOscillator() {
      const frequency = { value: 0 };
      const start = (at: number) => tones.push({ hertz: frequency.value, start: at });
      return { frequency, start, stop: () => undefined, connect: (to: unknown) => to };
    }
  }
  return { tones, Player };
}

afterEach(() => void vi.unstubAllGlobals());

test.each(["ready", "refused"] as const)("what is %s has its own tones and its own shake", (kind) => {
  const vibrate = vi.fn();
  const { tones, Player } = playedTones();
  vi.stubGlobal("navigator", { vibrate });
  vi.stubGlobal("window", { AudioContext: Player, setTimeout: vi.fn() });
  vi.stubGlobal("AudioContext", Player);
  sound(kind);
  expect(vibrate).toHaveBeenCalledWith(SHAKES[kind]);
  expect(tones.map(({ hertz }) => hertz)).toEqual(TONES[kind]);
  expect(tones.map(({ start }) => start)).toEqual([1, 1.25]);
});

test("where nothing can sound or shake, nothing fails", () => {
  vi.stubGlobal("navigator", {});
  vi.stubGlobal("window", {});
  expect(() => sound("ready")).not.toThrow();
});
