// The sound of a timer that has run out: two short tones, and a shake where the device can.

/** Sounds once. A device that may not sound stays still: the words are there in any case. */
export function sound(): void {
  navigator.vibrate?.([200, 100, 200]);
  if (!("AudioContext" in window)) return;
  const player = new AudioContext();
  const end = tone(player, 880, tone(player, 660, player.currentTime));
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
