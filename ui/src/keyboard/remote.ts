// The keys of a remote, a pedal or a headset: which of them may be chosen, and what each does.
import { REMOTE_ACTIONS, type RemoteAction, type RemoteKeys } from "../state/where";

/** What is asked of a key that was pressed. */
export type Pressed = Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey">;

/** Why a key can't be chosen. */
export type Refused =
  /** It types, or moves in what is typed. */
  | { typing: string }
  /** The window uses it as it is. */
  | { own: string }
  /** It says nothing by itself. */
  | "alone"
  /** It does something else already. */
  | { taken: RemoteAction };

const MOVES = new Set(["Backspace", "Delete", "Insert", "ArrowLeft", "ArrowRight", "Home", "End", "Dead"]);
const OWN = new Set(["Enter", "Tab", "Escape"]);
const ALONE = new Set([
  "Shift",
  "Control",
  "Alt",
  "AltGraph",
  "Meta",
  "Fn",
  "CapsLock",
  "NumLock",
  "Process",
  "Unidentified",
  "",
]);

/** Why a key can't be chosen for an action; nothing where it can. */
export function refusal(keys: RemoteKeys, action: RemoteAction, pressed: Pressed): Refused | null {
  const { key } = pressed;
  if (ALONE.has(key) || isCombined(pressed)) return "alone";
  // One character is what a key types, whatever the keyboard's language.
  if ([...key].length === 1 || MOVES.has(key)) return { typing: key };
  if (OWN.has(key)) return { own: key };
  const taken = REMOTE_ACTIONS.find((one) => one !== action && keys[one] === key);
  return taken ? { taken } : null;
}

/** What a key does by choice; nothing where it was not chosen. */
export function actionOf(keys: RemoteKeys, pressed: Pressed): RemoteAction | null {
  if (isCombined(pressed)) return null;
  return REMOTE_ACTIONS.find((action) => keys[action] === pressed.key) ?? null;
}

function isCombined({ ctrlKey, metaKey, altKey }: Pressed): boolean {
  return ctrlKey || metaKey || altKey;
}

/** A key as it is named on a screen: `AudioVolumeUp` as "Audio Volume Up". */
export function keyName(key: string): string {
  if (key === " ") return "Space";
  return key.replace(/([a-z])([A-Z])/g, "$1 $2");
}
