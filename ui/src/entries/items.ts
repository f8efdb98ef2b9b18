// What is counted.
import type { ItemView } from "../core/types";

/** The name of an item. */
export function itemName(items: ItemView[], id: string): string {
  return items.find((item) => item.id === id)?.name ?? id;
}
