// What is said for a while across the window: what has become ready elsewhere, what came in and belongs nowhere.

/** For so long it stands, in milliseconds. */
const STANDS_MS = 8_000;

/** How it is heard and felt. */
export type Kind = "ready" | "refused";

class Notice {
  /** What is said now; each is an object of its own, so that the same words are heard again. */
  now = $state.raw<{ text: string; kind: Kind } | null>(null);

  #end: ReturnType<typeof setTimeout> | undefined;

  /** Says it until something else is said or its time is over. */
  tell(text: string, kind: Kind): void {
    clearTimeout(this.#end);
    this.now = { text, kind };
    this.#end = setTimeout(() => this.clear(), STANDS_MS);
  }

  /** Says it no longer. */
  clear(): void {
    clearTimeout(this.#end);
    this.now = null;
  }
}

export const notice = new Notice();
