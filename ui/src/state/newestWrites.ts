// Texts on their way to the disk. Under each key only one write is under way, and after it the newest text is written:
// what is on disk in the end is what was typed last, however long a write takes.

interface Writing<Text> {
  newest: Text;
  /** The newest is still to be written. */
  waits: boolean;
  /** Ends when nothing is left to write. */
  ended: Promise<void>;
}

/** Writes in order for each key. */
export class NewestWrites<Text> {
  #write: (key: string, text: Text) => Promise<unknown>;
  #under = new Map<string, Writing<Text>>();

  /** `write` writes a text and never fails: what went wrong it tells by itself. */
  constructor(write: (key: string, text: Text) => Promise<unknown>) {
    this.#write = write;
  }

  /** Writes a text after what is under way under the same key. */
  put(key: string, text: Text): void {
    const under = this.#under.get(key);
    if (under) {
      under.newest = text;
      under.waits = true;
      return;
    }
    const writing: Writing<Text> = { newest: text, waits: true, ended: Promise.resolve() };
    this.#under.set(key, writing);
    writing.ended = this.#run(key, writing);
  }

  /** Waits until everything is written. */
  async written(): Promise<void> {
    await Promise.all([...this.#under.values()].map((writing) => writing.ended));
  }

  /** The newest texts that may not be on disk yet. */
  pending(): [key: string, text: Text][] {
    return [...this.#under].map(([key, writing]) => [key, writing.newest]);
  }

  async #run(key: string, writing: Writing<Text>): Promise<void> {
    while (writing.waits) {
      writing.waits = false;
      await this.#write(key, writing.newest);
    }
    this.#under.delete(key);
  }
}
