// What is heard and felt: short tones made here, and a shake where the device can.
import type { Kind } from "../state/notice.svelte";

/** The tones one after the other, in hertz: up for what is ready, down and low for what is refused. */
export const TONES: Record<Kind, number[]> = { ready: [660, 880], refused: [330, 220] };
/** The shakes and the pauses between them, in milliseconds. */
export const SHAKES: Record<Kind, number[]> = { ready: [200, 100, 200], refused: [400] };

/** Sounds once. A device that may not sound stays still: the words are there in any case. */
export function sound(kind: Kind): void {
  navigator.vibrate?.(SHAKES[kind]);
  if (!("AudioContext" in window)) return;
  const player = new AudioContext();
  const end = TONES[kind].reduce((start, hertz) => tone(player, hertz, start), player.currentTime);
  window.setTimeout(() => void player.close(), (end - player.currentTime) * 1000 + 100);
}

/** Plays a tone of a fifth of a second from `start` and answers when the next may begin, in seconds. */
function tone(player: AudioContext, hertz: number, start: number): number {
  const source = player.createOscillator();
  const loudness = player.createGain();
  source.frequency.value = hertz;
  loudness.gain.setValueAtTime(0.4, start);
  loudness.gain.linearRampToValueAtTime(0, start + 0.2);
  source.connect(loudness).connect(player.destination);
  source.start(start);
  source.stop(start + 0.2);
  return start + 0.25;
}
