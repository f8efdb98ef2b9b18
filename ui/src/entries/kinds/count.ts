// Pieces in the hand.
import { itemName } from "../items";
import CountPad from "../pads/CountPad.svelte";
import { kind, type ValueOf } from "./kind";
import { isRecord } from "./shape";

export const count = kind<"count", ValueOf<"count">>({
  pad: CountPad,
  empty: () => ({ of: {}, accounted: null }),
  fits: (found): found is ValueOf<"count"> => isRecord(found) && isRecord(found.of),
  isBlank: (typed) => Object.keys(typed.of).length === 0,
  value: (typed) => ({ value: typed }),
  text: (value, entry, items) => {
    const text = (id: string, pieces: number) => `${pieces}/${entry.ask.count.of[id] ?? "?"}`;
    const counted = Object.entries(value.of);
    const [only] = counted;
    if (only && counted.length === 1) return text(...only);
    return counted.map(([id, pieces]) => `${itemName(items, id)} ${text(id, pieces)}`).join(", ");
  },
  // Of several items it names those that are short first.
  isToldBySentence: (value) => Object.keys(value.of).length > 1,
});
