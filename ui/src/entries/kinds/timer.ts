// A time to wait. Nothing is typed.
import { say } from "../../words/say";
import TimerPad from "../pads/TimerPad.svelte";
import { kind, type ValueOf } from "./kind";
import { isRecord } from "./shape";

export const timer = kind<"timer", ValueOf<"timer">>({
  pad: TimerPad,
  empty: () => ({}),
  fits: (found): found is ValueOf<"timer"> => isRecord(found),
  isBlank: () => true,
  value: (typed) => ({ value: typed }),
  text: () => say("entry-timer-waited"),
  saysItself: true,
});
