import { expect, test } from "vitest";
import { NO_REMOTE } from "../state/where";
import { actionOf, keyName, type Pressed, refusal } from "./remote";

const pressed = (key: string, more: Partial<Pressed> = {}): Pressed => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  ...more,
});
const keys = { ...NO_REMOTE, next: "PageDown", back: "F5" };

test.each(["PageDown", "PageUp", "ArrowDown", "F5", "MediaPlayPause", "AudioVolumeUp"])(
  "%s can be chosen",
  (key) => {
    expect(refusal(NO_REMOTE, "do", pressed(key))).toBeNull();
  },
);

test.each(["7", "b", "é", "Ω", ".", "-", " ", "Backspace", "Delete", "ArrowLeft", "Home"])(
  'the key "%s" is needed for typing',
  (key) => {
    expect(refusal(NO_REMOTE, "next", pressed(key))).toEqual({ typing: key });
  },
);

test.each(["Enter", "Tab", "Escape"])("%s does already what it does", (key) => {
  expect(refusal(NO_REMOTE, "do", pressed(key))).toEqual({ own: key });
});

test("a key that says nothing by itself is refused, and so are keys pressed together", () => {
  for (const key of ["Shift", "Control", "Unidentified"])
    expect(refusal(NO_REMOTE, "do", pressed(key))).toBe("alone");
  expect(refusal(NO_REMOTE, "do", pressed("PageUp", { ctrlKey: true }))).toBe("alone");
});

test("a key that does something else already is refused, the same one again is not", () => {
  expect(refusal(keys, "do", pressed("PageDown"))).toEqual({ taken: "next" });
  expect(refusal(keys, "next", pressed("PageDown"))).toBeNull();
});

test("a chosen key does what it was chosen for, alone and no other way", () => {
  expect(actionOf(keys, pressed("PageDown"))).toBe("next");
  expect(actionOf(keys, pressed("F5"))).toBe("back");
  expect(actionOf(keys, pressed("F5", { ctrlKey: true }))).toBeNull();
  expect(actionOf(keys, pressed("PageUp"))).toBeNull();
  expect(actionOf(NO_REMOTE, pressed("PageDown"))).toBeNull();
});

test("keys are named so that they can be read", () => {
  expect(["AudioVolumeUp", "PageDown", "F5", " "].map(keyName)).toEqual([
    "Audio Volume Up",
    "Page Down",
    "F5",
    "Space",
  ]);
});
