// Keeps the screen awake while a job is on it, where the device can. Screen Wake Lock API, W3C.

/** Asks the device to keep the screen awake; answers what lets it sleep again. Where it can't, nothing happens. */
export function stayAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let over = false;
  const ask = async () => {
    if (over || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    try {
      lock = await navigator.wakeLock.request("screen");
      if (over) await lock.release();
    } catch {
      // The device refuses, for example to save its battery: then the screen sleeps as it is set to.
      lock = null;
    }
  };
  // A hidden page loses its lock and asks again when it is seen.
  const seen = () => void ask();
  document.addEventListener("visibilitychange", seen);
  void ask();
  return () => {
    over = true;
    document.removeEventListener("visibilitychange", seen);
    void lock?.release();
  };
}
