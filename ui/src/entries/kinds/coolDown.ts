// A hot part probed against its touch limit.
import CoolDownPad from "../pads/CoolDownPad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const coolDown = kind<"cool_down", ValueOf<"cool_down">>({
  pad: CoolDownPad,
  empty: (entry) => ({ value: "", unit: entry.units[0] ?? "", by: "contact" }),
  fits: (found): found is ValueOf<"cool_down"> => hasTexts(found, "value", "unit") && "by" in found,
  isBlank: (typed) => typed.value === "",
  value: (typed) => ({ value: typed }),
  text: ({ value, unit }) => `${value} ${unit}`,
});
