// A text that is scanned or typed.
import { say } from "../../words/say";
import ScanPad from "../pads/ScanPad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const scan = kind<"scan", ValueOf<"scan">>({
  pad: ScanPad,
  empty: () => ({ text: "" }),
  fits: (found): found is ValueOf<"scan"> => hasTexts(found, "text"),
  isBlank: (typed) => typed.text === "",
  value: (typed) => ({ value: typed }),
  text: (value) => value.text,
  asked: (entry) => [say(`entry-scan-${entry.ask.scan.of}`)],
  saysItself: true,
});
