// The values that the shop has for all its vehicles. What is wrong with one is said by the core.
import { call } from "../../core/call";
import type { SheetValueView, ShopValue, TypedShopValue, TypedValue } from "../../core/types";
import { Typing } from "../../parts/typing";
import { remembered } from "../../state/remembered.svelte";
import { shop } from "../../state/shop.svelte";
import { answerOf, troubles } from "../../state/troubles.svelte";

class Values {
  /** What the core last showed; null: not asked yet. */
  list = $state.raw<ShopValue[] | null>(null);
  /** What the core says about the one that is typed. */
  view = $state.raw<SheetValueView | null>(null);

  #typing = new Typing<TypedShopValue, SheetValueView | null>(
    (value) => answerOf(() => call("judge_shop_value", { value })),
    (view) => {
      if (view?.key === this.typed?.key) this.view = view;
    },
  );

  /** The one that is typed and not kept yet. */
  get typed(): TypedShopValue | null {
    return remembered.shopValue;
  }

  /** Asks for all of them, and looks at the one that was typed when the window was last open. */
  async load(): Promise<void> {
    this.list = await answerOf(() => call("shop_values", {}));
    if (this.typed) this.#typing.type(this.typed);
  }

  /** Begins to type one. */
  begin({ value, view, seen }: ShopValue): void {
    this.view = view;
    remembered.put({ shopValue: { key: view.key, seen, value } });
  }

  /** Types the one that was begun. */
  type(value: TypedValue): void {
    if (!this.typed) return;
    troubles.last = null;
    const typed = { ...this.typed, value };
    remembered.put({ shopValue: typed });
    this.#typing.type(typed);
  }

  /** Puts away what is typed. */
  close(): void {
    troubles.last = null;
    this.view = null;
    remembered.put({ shopValue: null });
  }

  /** Keeps the one that is typed. */
  async keepTyped(): Promise<void> {
    const { typed } = this;
    if (!typed) return;
    await this.#typing.settled();
    if (await this.#keep(typed)) this.close();
  }

  /** Keeps one as it is offered. */
  async confirm({ value, view, seen }: ShopValue): Promise<void> {
    await this.#keep({ key: view.key, seen, value });
  }

  async #keep(value: TypedShopValue): Promise<boolean> {
    const list = await shop.withPin(() => call("put_shop_value", { value, who: shop.actor?.id ?? null }));
    if (list) this.list = list;
    return list !== null;
  }
}

export const values = new Values();
