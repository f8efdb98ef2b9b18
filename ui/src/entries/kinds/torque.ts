// Settings that clicked, and the tool that they clicked with.
import type { Accounted, Adapter, Tool } from "../../core/types";
import TorquePad from "../pads/TorquePad.svelte";
import { stageTargets, turnedBolts } from "../torque";
import { kind } from "./kind";
import { hasTexts } from "./shape";

/** A torque whose tool is not chosen yet. */
export interface TorqueDraft {
  stages: string[];
  unit: string;
  tool: Tool | null;
  adapter?: Adapter | null;
  angles?: string[];
  exception?: Accounted | null;
  /** Fasteners of the stage in work that clicked, where they are entered one by one. */
  done?: number;
}

export const torque = kind<"torque", TorqueDraft>({
  pad: TorquePad,
  empty: (entry) => {
    const angles = Array.from({ length: turnedBolts(entry) }, () => "");
    const stages = stageTargets(entry).map(() => "");
    return { stages, unit: entry.units[0] ?? "", tool: null, ...(angles.length > 0 && { angles }) };
  },
  fits: (found, entry): found is TorqueDraft =>
    hasTexts(found, "unit") &&
    "tool" in found &&
    Array.isArray(found.stages) &&
    found.stages.length === stageTargets(entry).length,
  isBlank: (typed) => typed.tool === null && typed.stages.every((text) => text === ""),
  value: ({ tool, done: _, ...clicked }) => {
    if (!tool) return { missing: "entry-missing-tool" };
    if (clicked.stages.every((text) => text === "")) return { missing: "entry-missing-click" };
    return { value: { ...clicked, tool } };
  },
  text: ({ stages, unit }) => `${stages.join(" · ")} ${unit}`,
});
