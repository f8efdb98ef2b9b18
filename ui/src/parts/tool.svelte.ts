// A torque tool while it is typed. What it is worth is said by the core.
import { call } from "../core/call";
import type { SetupTool, Tool, ToolId, ToolView, TypedTool } from "../core/types";
import { remembered } from "../state/remembered.svelte";
import { shop } from "../state/shop.svelte";
import { answerOf, troubles } from "../state/troubles.svelte";
import { Typing } from "./typing";

/** A tool of which nothing is typed yet. */
export const NO_TOOL: Tool = { name: "", min: "", max: "", unit: "N·m", calibration_due: "" };

/** Units that torque tools are marked in. */
export const TOOL_UNITS = ["N·m", "lbf·ft", "lbf·in"];

/** A tool that is typed; remembered until it is on the list. */
export class ToolTyping {
  /** What the core says about it. */
  view = $state.raw<ToolView | null>(null);
  #typing = new Typing<Tool, ToolView[] | null>(
    (tool) => answerOf(() => call("judge_tools", { tools: [tool] })),
    (views) => {
      this.view = views?.[0] ?? null;
    },
  );

  /** Goes on with what is typed, or begins with the tool that is to be changed. */
  constructor(change: SetupTool | null) {
    const id = change?.id ?? null;
    const seen = id === null ? [] : (shop.setup.seen[id] ?? []);
    if (remembered.tool?.id !== id) this.#put({ id, seen, tool: change?.tool ?? NO_TOOL });
    this.#typing.type(this.draft.tool);
  }

  /** What is typed so far. */
  get draft(): TypedTool {
    return remembered.tool ?? { id: null, seen: [], tool: NO_TOOL };
  }

  /** Types in one field. */
  type(field: keyof Tool, text: string): void {
    const tool = { ...this.draft.tool, [field]: text };
    troubles.last = null;
    this.#put({ ...this.draft, tool });
    this.#typing.type(tool);
  }

  /** What keeps it from being kept. */
  get wrong(): string | null {
    const first = this.view?.problems[0]?.message;
    return first ? (first.text ?? first.id) : null;
  }

  /** What else there is to say. */
  get notes(): string[] {
    const { past = null, notes = [] } = this.view ?? {};
    return [...(past ? [past] : []), ...notes].map((note) => note.text ?? note.id);
  }

  /** Keeps it. Answers the tool when it was kept. */
  async keep(): Promise<Tool | null> {
    const { draft } = this;
    let id: ToolId | null = null;
    const setup = await shop.changeSetup(async (who) => {
      const kept = await call("put_tool", { tool: draft, who });
      id = kept.id;
      return kept.setup;
    });
    if (setup === null) return null;
    this.#put(null);
    return setup.tools.find((one) => one.id === id)?.tool ?? draft.tool;
  }

  #put(draft: TypedTool | null): void {
    remembered.put({ tool: draft });
  }
}
