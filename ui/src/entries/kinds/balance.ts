// What is not known of a fluid balance yet.
import BalancePad from "../pads/BalancePad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const balance = kind<"balance", ValueOf<"balance">>({
  pad: BalancePad,
  empty: (entry) => ({ temperature: "", temperature_unit: entry.temperature_units[0] ?? "" }),
  fits: (found): found is ValueOf<"balance"> => hasTexts(found, "temperature", "temperature_unit"),
  isBlank: (typed) => typed.temperature === "" && !typed.explained,
  value: (typed) => ({ value: typed }),
  text: ({ explained, temperature, temperature_unit }) =>
    explained?.reason ?? `${temperature} ${temperature_unit}`.trim(),
});
