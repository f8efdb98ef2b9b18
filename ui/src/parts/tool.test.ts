import { beforeEach, expect, test, vi } from "vitest";
import type { Tool, ToolView } from "../core/types";

const core: Record<string, unknown> = {};
const asked: [string, Record<string, unknown>][] = [];

vi.mock("../core/call", async (original) => ({
  ...(await original<typeof import("../core/call")>()),
  call: async (name: string, takes: Record<string, unknown>) => {
    asked.push([name, takes]);
    const answer = core[name];
    if (answer instanceof Error) throw { kind: "other", message: answer.message };
    return answer ?? null;
  },
}));
vi.stubGlobal("window", { matchMedia: () => ({ matches: false }) });

const { bench } = await import("../bench.svelte");
const { ToolTyping } = await import("./tool.svelte");

const wrench: Tool = { name: "wrench B", min: "5", max: "25", unit: "N·m", calibration_due: "2027-03-01" };
const turned: ToolView = {
  problems: [{ field: "min", message: { id: "tool-range", args: {}, text: "The range cannot be." } }],
  past: false,
  notes: [],
};

/** What a command was last asked with. */
function last(command: string): Record<string, unknown> | undefined {
  return asked.filter(([name]) => name === command).at(-1)?.[1];
}

beforeEach(async () => {
  for (const name of Object.keys(core)) delete core[name];
  core.opened = {
    troubles: [],
    kit: { people: [], tools: [wrench] },
    pins: [],
    window: null,
    demo_clock: false,
  };
  core.jobs = [];
  core.judge_tools = [{ problems: [], past: false, notes: [] }];
  bench.trouble = null;
  await bench.open();
  asked.length = 0;
});

test("what is typed of a tool is kept with every key, and what the core says stands beside it", async () => {
  core.judge_tools = [turned];
  const typing = new ToolTyping(null);
  typing.type("name", "wrench C");
  typing.type("min", "30");
  await vi.waitFor(() => expect(typing.wrong).toBe("The range cannot be."));
  const where = JSON.parse(last("put_setting")?.text as string);
  expect(where.tool.tool).toMatchObject({ name: "wrench C", min: "30" });
  expect(new ToolTyping(null).draft.tool.name).toBe("wrench C");
});

test("a tool that is changed takes the place of the one it was", async () => {
  const typing = new ToolTyping(wrench);
  typing.type("certificate", "7-114");
  const changed = { ...wrench, certificate: "7-114" };
  core.put_tool = { people: [], tools: [changed] };
  expect(await typing.keep()).toEqual(changed);
  expect(last("put_tool")).toEqual({
    tool: changed,
    replaces: "wrench B",
  });
  expect([bench.tool, bench.kit.tools]).toEqual([null, [changed]]);
});

test("a tool that the core does not take stays typed", async () => {
  const typing = new ToolTyping(null);
  typing.type("name", "wrench B");
  core.put_tool = new Error("There is one already.");
  expect(await typing.keep()).toBeNull();
  expect([bench.trouble?.message, bench.tool?.tool.name]).toEqual(["There is one already.", "wrench B"]);
});
