// A text that is scanned or typed.
import { say } from "../../words/say";
import ScanPad from "../pads/ScanPad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

/** A text while it is typed. */
export interface ScanDraft extends ValueOf<"scan"> {
  /** It is said that there is none. */
  none?: true;
}

export const scan = kind<"scan", ScanDraft>({
  pad: ScanPad,
  empty: () => ({ text: "" }),
  fits: (found): found is ScanDraft => hasTexts(found, "text"),
  isBlank: (typed) => typed.text === "",
  value: ({ text, none }) => (text === "" && !none ? { missing: "entry-missing-text" } : { value: { text } }),
  text: (value) => value.text,
  asked: (entry) => [say(`entry-scan-${entry.ask.scan.of}`)],
  saysItself: true,
});
