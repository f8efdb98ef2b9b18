// The spec sheet that is looked at or typed. What is typed is on its way to the disk with every key.
import { call, importSheet } from "../../core/call";
import type { SheetFrom, SheetPage, TypedSheet, TypedValue } from "../../core/types";
import { Typing } from "../../parts/typing";
import { nav } from "../../state/nav.svelte";
import { shop } from "../../state/shop.svelte";
import { answerOf } from "../../state/troubles.svelte";
import type { SheetAt } from "../../state/where";

class Sheets {
  /** The sheet as the core last showed it. */
  page = $state.raw<SheetPage | null>(null);
  /** What is typed, ahead of the core by the moment of writing. */
  typed = $state.raw<TypedSheet | null>(null);
  /** What was put away last, until it is put back. */
  dropped = $state.raw<TypedSheet | null>(null);
  /** Where the file of a sheet was written. */
  saved = $state<string | null>(null);

  #typing = new Typing<TypedSheet, SheetPage | null>(
    (typed) => answerOf(() => call("type_sheet", { typed })),
    (page) => {
      if (!page || page.typed.draft !== this.typed?.draft) return;
      this.page = page;
      // What the checklist asks for besides comes from the core; what is typed stays as it is.
      this.typed = { ...this.typed, values: { ...page.typed.values, ...this.typed.values } };
    },
  );

  /** Whether this is shown already. */
  shows(at: SheetAt): boolean {
    return this.page?.typed.draft === at.id && this.page.typing === at.typing;
  }

  /** Opens the sheet that is looked at. */
  async open(at: SheetAt): Promise<void> {
    await this.#typing.settled();
    this.saved = null;
    const asked = at.typing
      ? await answerOf(() => call("typed_sheet", { draft: at.id }))
      : await answerOf(() => call("sheet", { id: at.id }));
    this.#show(asked);
  }

  /** Begins to type a sheet and looks at it. */
  async begin(from: SheetFrom): Promise<void> {
    this.#goTo(await answerOf(() => call("begin_sheet", { from })));
  }

  /** Types the title. */
  title(title: string): void {
    if (this.typed) this.#type({ ...this.typed, title });
  }

  /** Types where the values come from that name no source of their own. */
  source(source: string): void {
    if (this.typed) this.#type({ ...this.typed, source });
  }

  /** Makes it for another checklist: what that one asks for besides is added as blanks. */
  madeFor(checklist: string): void {
    if (this.typed) this.#type({ ...this.typed, checklist });
  }

  /** Types a value. */
  value(key: string, value: TypedValue): void {
    if (this.typed) this.#type({ ...this.typed, values: { ...this.typed.values, [key]: value } });
  }

  /** Keeps what is typed as a revision. Answers whether it was kept. */
  async keep(): Promise<boolean> {
    const { typed } = this;
    const { actor } = shop;
    if (!typed || !actor) return false;
    await this.#typing.settled();
    const id = await answerOf(() => call("keep_sheet", { draft: typed.draft, actor }));
    if (id === null) return false;
    this.#look({ id, typing: false });
    return true;
  }

  /** Puts what is typed away; it can be put back. */
  async drop(): Promise<void> {
    const { typed } = this;
    if (!typed) return;
    await this.#typing.settled();
    const gone = await answerOf(async () => {
      await call("drop_sheet", { draft: typed.draft });
      return true;
    });
    if (!gone) return;
    this.dropped = typed;
    nav.go("setup");
  }

  /** Puts back what was put away. */
  async putBack(): Promise<void> {
    const typed = this.dropped;
    if (!typed) return;
    const page = await answerOf(() => call("type_sheet", { typed }));
    if (page) this.dropped = null;
    this.#goTo(page);
  }

  /** Keeps that whoever works now compared these values with their sources. Answers whether it was kept. */
  async check(keys: string[]): Promise<boolean> {
    const id = this.typed?.id;
    const seen = this.typed?.seen;
    const { actor } = shop;
    if (!id || !seen || !actor) return false;
    const kept = await shop.withPin(async () => {
      await call("check_sheet", { id, seen, keys, actor });
      return true;
    });
    if (!kept) return false;
    this.#look({ id, typing: false });
    await this.open({ id, typing: false, value: null, compared: null });
    return true;
  }

  /** Writes the sheet as a file. */
  async export(): Promise<void> {
    const id = this.typed?.id;
    if (id) this.saved = await answerOf(() => call("export_sheet", { id }));
  }

  /** Takes in a sheet from a file and looks at it. */
  async import(file: Blob): Promise<void> {
    const id = await answerOf(() => importSheet(file, shop.actor?.id ?? null));
    if (id === null) return;
    this.#show(null);
    this.#look({ id, typing: false });
  }

  #type(typed: TypedSheet): void {
    this.typed = typed;
    this.#typing.type(typed);
  }

  #goTo(page: SheetPage | null): void {
    if (!page) return;
    this.#show(page);
    this.#look({ id: page.typed.draft, typing: true });
  }

  #look(at: Pick<SheetAt, "id" | "typing">): void {
    nav.lookAtSheet({ ...at, value: null, compared: null });
  }

  #show(page: SheetPage | null): void {
    this.page = page;
    this.typed = page?.typed ?? null;
  }
}

export const sheets = new Sheets();
