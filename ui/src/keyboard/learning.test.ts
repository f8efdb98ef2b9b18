import { beforeEach, expect, test, vi } from "vitest";
import { NO_REMOTE } from "../state/where";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { remembered } = await import("../state/remembered.svelte");
const { learning } = await import("./learning.svelte");

const pressed = (key: string) => ({ key, ctrlKey: false, metaKey: false, altKey: false });

beforeEach(() => {
  remembered.put({ remote: NO_REMOTE });
  learning.end();
});

test("the key that is pressed is the one, and is kept", () => {
  learning.begin("next");
  learning.take(pressed("PageDown"));
  expect(remembered.remote).toEqual({ next: "PageDown", do: null, back: null });
  expect([learning.action, learning.said]).toEqual([null, "Page Down is the key for Next."]);
});

test("a key that is needed for typing is refused with a sentence, and the next one still counts", () => {
  learning.begin("do");
  learning.take(pressed("7"));
  expect([remembered.remote, learning.said]).toEqual([
    NO_REMOTE,
    "The key 7 is needed for typing. Press another one.",
  ]);
  learning.take(pressed("F6"));
  expect(remembered.remote.do).toBe("F6");
});

test("a key that does something else already is said to", () => {
  remembered.put({ remote: { ...NO_REMOTE, back: "F6" } });
  learning.begin("do");
  learning.take(pressed("F6"));
  expect(learning.said).toBe(
    "This key is already the one for Back. Press another one, or take it away there first.",
  );
  expect(remembered.remote.do).toBeNull();
});

test("Escape ends it, and without learning a key is none", () => {
  learning.begin("do");
  learning.take(pressed("Escape"));
  learning.take(pressed("F6"));
  expect([learning.action, remembered.remote]).toEqual([null, NO_REMOTE]);
});

test("a key is taken away", () => {
  remembered.put({ remote: { ...NO_REMOTE, do: "F6", back: "F7" } });
  learning.takeAway("do");
  expect(remembered.remote).toEqual({ next: null, do: null, back: "F7" });
});

test("the keys are found again, and where none were kept there are none", () => {
  remembered.restore({ remote: { ...NO_REMOTE, next: "F5" }, sound: false });
  expect([remembered.remote.next, remembered.sound]).toEqual(["F5", false]);
  remembered.restore({});
  expect([remembered.remote, remembered.sound]).toEqual([NO_REMOTE, true]);
});
