// Times and durations as they are shown. The core gives milliseconds and minutes; nothing is reckoned with here.

/** A wall time in milliseconds since 1970 UTC, as the shop's clock shows it: `14:06`. */
export function timeOfDay(wallMs: number, utcOffsetMin: number): string {
  return new Date(wallMs + utcOffsetMin * 60_000).toISOString().slice(11, 16);
}

/** The day of a time in milliseconds since 1970 UTC, by this tablet's clock: `2026-03-02`. */
export function dayAt(wallMs: number): string {
  const at = new Date(wallMs);
  const two = (number: number) => String(number).padStart(2, "0");
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** Whole minutes as hours and minutes: `1 h 52`. */
export function hours(minutes: number): string {
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")}`;
}

/** Milliseconds left, counted down: `12:05`, never below zero. */
export function countdown(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}
