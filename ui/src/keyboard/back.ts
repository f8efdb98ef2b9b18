// Where Escape goes from a screen on which nothing is open.
import type { Screen } from "../state/where";

/** The screen that one is behind; nothing where there is none. */
export function behind(screen: Screen, hasJob: boolean): Screen | null {
  if (screen === "sheet") return "setup";
  if (screen === "new_job") return "bay";
  if (screen === "job" || screen === "bay") return null;
  return hasJob ? "job" : "bay";
}
