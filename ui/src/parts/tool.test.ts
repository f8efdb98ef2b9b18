import { beforeEach, expect, test, vi } from "vitest";
import { asked, askedFor, core, opens, setupOf } from "../core/played";
import type { Tool, ToolView } from "../core/types";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { openWindow } = await import("../state/opening");
const { remembered } = await import("../state/remembered.svelte");
const { shop } = await import("../state/shop.svelte");
const { troubles } = await import("../state/troubles.svelte");
const { ToolTyping } = await import("./tool.svelte");

const wrench: Tool = { name: "wrench B", min: "5", max: "25", unit: "N·m", calibration_due: "2027-03-01" };
const turned: ToolView = {
  problems: [{ field: "min", message: { id: "tool-range", args: {}, text: "The range cannot be." } }],
  past: null,
  notes: [],
};

beforeEach(async () => {
  opens([], [wrench]);
  core.judge_tools = [{ problems: [], past: null, notes: [] }];
  troubles.last = null;
  await openWindow();
  asked.length = 0;
});

test("what is typed of a tool is kept with every key, and what the core says stands beside it", async () => {
  core.judge_tools = [turned];
  const typing = new ToolTyping(null);
  typing.type("name", "wrench C");
  typing.type("min", "30");
  await vi.waitFor(() => expect(typing.wrong).toBe("The range cannot be."));
  const where = JSON.parse(askedFor("put_setting").at(-1)?.text as string);
  expect(where.tool.tool).toMatchObject({ name: "wrench C", min: "30" });
  expect(new ToolTyping(null).draft.tool.name).toBe("wrench C");
});

test("a tool that is changed stays the tool that it was", async () => {
  const typing = new ToolTyping({ id: "t1", tool: wrench });
  typing.type("certificate", "7-114");
  const changed = { ...wrench, certificate: "7-114" };
  const kept = [{ id: "t1", tool: changed }];
  core.put_tool = { id: "t1", setup: { ...setupOf([], []), tools: kept } };
  expect(await typing.keep()).toEqual(changed);
  const seen = ["h"];
  expect(askedFor("put_tool").at(-1)).toEqual({ tool: { id: "t1", seen, tool: changed }, who: null });
  expect([remembered.tool, shop.setup.tools]).toEqual([null, kept]);
});

test("the tool that was kept is found by its id, whatever another one is called", async () => {
  const other = { ...wrench, max: "50" };
  const tools = [
    { id: "t1", tool: other },
    { id: "t2", tool: wrench },
  ];
  core.put_tool = { id: "t2", setup: { ...setupOf([], []), tools } };
  const typing = new ToolTyping(null);
  typing.type("name", "wrench B");
  expect(await typing.keep()).toEqual(wrench);
});

test("that a calibration has ended is said first", async () => {
  const past = { id: "tool-past", args: {}, text: "Its calibration ended." };
  const note = { id: "tool-class-a", args: {}, text: "Class A." };
  core.judge_tools = [{ problems: [], past, notes: [note] }];
  const typing = new ToolTyping(null);
  await vi.waitFor(() => expect(typing.notes).toEqual(["Its calibration ended.", "Class A."]));
});

test("a tool that the core does not take stays typed", async () => {
  const typing = new ToolTyping(null);
  typing.type("name", "wrench B");
  core.put_tool = new Error("There is one already.");
  expect(await typing.keep()).toBeNull();
  expect([troubles.last?.message, remembered.tool?.tool.name]).toEqual(["There is one already.", "wrench B"]);
});
