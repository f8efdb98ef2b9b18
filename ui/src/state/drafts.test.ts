import { beforeEach, expect, test, vi } from "vitest";
import { asked, askedFor, core } from "../core/played";
import { openPlayed } from "./playedJob";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { collectedKey, entryKey, modeKey, reasonKey } = await import("./draftKey");
const { drafts } = await import("./drafts.svelte");
const { troubles } = await import("./troubles.svelte");

beforeEach(openPlayed);

const vin = entryKey("identify", "vin");

test("a step's drafts are forgotten together, those of others and reasons stay", async () => {
  const own = [vin, collectedKey("identify", "vin"), modeKey("identify")];
  const others = [entryKey("concern", "vin"), entryKey("identify/vin", "x"), reasonKey("void", "identify")];
  for (const key of [...own, ...others]) drafts.put(key, "text");
  drafts.clearStep("identify");
  expect(own.map((key) => drafts.get(key))).toEqual(own.map(() => undefined));
  expect(others.map((key) => drafts.get(key))).toEqual(others.map(() => "text"));
  await drafts.written("j1");
  expect(askedFor("clear_draft").map((takes) => takes.key)).toEqual(own);
});

test("a write that fails is told, and what is typed next is written all the same", async () => {
  core.put_draft = ({ text }: { text: string }) =>
    text === "D" ? Promise.reject({ kind: "store", message: "The disk is full." }) : null;
  drafts.put(vin, "D");
  drafts.put(vin, "DE");
  expect(drafts.get(vin)).toBe("DE");
  await drafts.written("j1");
  expect(troubles.last?.message).toBe("The disk is full.");
  expect(askedFor("put_draft").map((takes) => takes.text)).toEqual(["D", "DE"]);
});

test("what is typed of one job is written to that job, also after another is shown", async () => {
  const land: (() => void)[] = [];
  core.put_draft = () => new Promise<null>((resolve) => land.push(() => resolve(null)));
  drafts.put(vin, "D");
  drafts.put(vin, "DE");
  drafts.show("j2", {});
  expect(drafts.get(vin)).toBeUndefined();
  drafts.put(vin, "X");
  for (let at = 0; at < 3; at++) {
    land.shift()?.();
    await new Promise((turn) => setTimeout(turn));
  }
  expect(asked.map(([, takes]) => [takes.job, takes.text])).toEqual([
    ["j1", "D"],
    ["j2", "X"],
    ["j1", "DE"],
  ]);
});

test("what was read gives way to what is newer and still to be written", () => {
  core.put_draft = () => new Promise(() => {});
  drafts.put(vin, "DEM0");
  drafts.show("j1", { [vin]: "DEM", [modeKey("identify")]: "later" });
  expect([drafts.get(vin), drafts.get(modeKey("identify"))]).toEqual(["DEM0", "later"]);
});
