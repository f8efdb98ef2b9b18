// Every word the window says is in the message files, and nothing there is said by nobody.
import { FluentResource } from "@fluent/bundle";
import { expect, test } from "vitest";
import { canSay, say } from "./say";

const sources = import.meta.glob<string>(
  ["../**/*.svelte", "../**/*.ts", "!../**/*.test.ts", "!../core/**"],
  {
    query: "?raw",
    import: "default",
    eager: true,
  },
);
const files = import.meta.glob<string>("../../../src-tauri/messages/en/window/*.ftl", {
  query: "?raw",
  import: "default",
  eager: true,
});

const ids = Object.values(files).flatMap((text) =>
  new FluentResource(text).body.map((message) => message.id),
);
// An id as it stands in a quoted text; one that goes on with a value ends in a hyphen.
const named = Object.values(sources).flatMap((text) => [
  ...text.matchAll(/["'`]((?:back|sheet|frame|entry|screens|plan)(?:-[a-z0-9]+)*-?)(?=["'`]|\$\{)/g),
]);
const whole = new Set(named.map((match) => match[1] ?? "").filter((id) => !id.endsWith("-")));
const begun = [...new Set(named.map((match) => match[1] ?? "").filter((id) => id.endsWith("-")))];

test("what the window says is in the message files", () => {
  const prefixes = new Set(["sheet", "frame", "entry", "screens", "plan"]);
  const lacking = [...whole].filter((id) => !canSay(id) && !prefixes.has(id));
  expect(lacking).toEqual([]);
  for (const start of begun)
    expect(
      ids.some((id) => id.startsWith(start)),
      start,
    ).toBe(true);
});

test("nothing in the message files is said by nobody", () => {
  const idle = ids.filter((id) => !whole.has(id) && !begun.some((start) => id.startsWith(start)));
  expect(idle).toEqual([]);
});

test("no id is there twice", () => {
  expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
});

test("a sentence chooses its form by number", () => {
  expect(say("sheet-and-more", { count: 1 })).toBe("And one more.");
  expect(say("sheet-and-more", { count: 3 })).toBe("And 3 more.");
});
