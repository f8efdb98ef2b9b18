// Sound and shaking when a time is up. A device that can do neither stays silent: the screen says it in words.

/** Three short tones: hertz, and seconds from tone to tone. */
const TONE_HZ = 880;
const TONE_S = 0.35;

/** Sounds and shakes once. */
export function ring(): void {
  shake();
  void sound();
}

function shake(): void {
  // Desktop webviews have no `vibrate`, whatever the types say.
  if (typeof navigator.vibrate === "function") navigator.vibrate([400, 200, 400, 200, 400]);
}

async function sound(): Promise<void> {
  if (typeof AudioContext === "undefined") return;
  try {
    const audio = new AudioContext();
    await audio.resume();
    for (const tone of [0, 1, 2]) {
      const source = audio.createOscillator();
      source.frequency.value = TONE_HZ;
      source.connect(audio.destination);
      source.start(audio.currentTime + tone * TONE_S);
      source.stop(audio.currentTime + tone * TONE_S + TONE_S / 2);
      if (tone === 2) source.onended = () => void audio.close();
    }
  } catch (error) {
    // No sound device, or none allowed: nothing that anybody in the bay can do now.
    console.warn("no sound:", error);
  }
}
