// The checklists of the program and those of the shop, and which of them is open.
import { call, importChecklist } from "../../core/call";
import type { ChecklistLine, ChecklistList } from "../../core/types";
import { shop } from "../../state/shop.svelte";
import { answerOf, troubles } from "../../state/troubles.svelte";

class Checklists {
  list = $state.raw<ChecklistList | null>(null);
  /** Where the file of a checklist was written. */
  saved = $state<string | null>(null);
  #hash = $state<string | null>(null);

  /** The checklist that is open. */
  get open(): ChecklistLine | null {
    return this.list?.checklists.find((line) => line.offer.hash === this.#hash) ?? null;
  }

  look(hash: string | null): void {
    this.#hash = hash;
    this.saved = null;
    troubles.last = null;
  }

  async load(): Promise<void> {
    this.#show(await answerOf(() => call("checklists", {})));
  }

  /** Takes in a checklist from a file and opens it. */
  async import(file: Blob): Promise<void> {
    const hash = await answerOf(() => importChecklist(file));
    if (hash === null) return;
    await this.load();
    this.look(hash);
  }

  /** Has jobs started with it from now on, as who works now says. */
  async adopt({ offer, seen }: ChecklistLine): Promise<void> {
    const who = shop.actor?.id ?? null;
    this.#show(await answerOf(() => call("adopt_checklist", { checklist: offer.hash, seen, who })));
  }

  /** Forgets one that was taken in. */
  async drop({ offer }: ChecklistLine): Promise<void> {
    this.#show(await answerOf(() => call("drop_checklist", { id: offer.id })));
  }

  /** Writes it as a file. */
  async export({ offer }: ChecklistLine): Promise<void> {
    this.saved = await answerOf(() => call("export_checklist", { checklist: offer.hash }));
  }

  #show(list: ChecklistList | null): void {
    this.list = list ?? this.list;
  }
}

export const checklists = new Checklists();

/** Whether it is only taken in: a person can adopt it, or discard it. */
export function isTakenIn(line: ChecklistLine): boolean {
  return !line.built_in && !line.adopted;
}
