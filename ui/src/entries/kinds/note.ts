// A note.
import NotePad from "../pads/NotePad.svelte";
import { kind, type ValueOf } from "./kind";
import { hasTexts } from "./shape";

export const note = kind<"note", ValueOf<"note">>({
  pad: NotePad,
  empty: () => ({ text: "" }),
  fits: (found): found is ValueOf<"note"> => hasTexts(found, "text"),
  isBlank: (typed) => typed.text === "",
  value: (typed) => ({ value: typed }),
  text: (value) => value.text,
  saysItself: true,
});
