// Sends what is typed to the core one after the other, so that an older text never takes the place of a newer one.

/** What is typed goes through here. Texts that are overtaken while one is under way are never sent. */
export class Typing<Text, Answer> {
  #send: (text: Text) => Promise<Answer>;
  #got: (answer: Answer) => void;
  #waiting: { text: Text } | null = null;
  #under: Promise<void> | null = null;

  /** `send` must not fail; `got` is told of answers to the newest text only. */
  constructor(send: (text: Text) => Promise<Answer>, got: (answer: Answer) => void) {
    this.#send = send;
    this.#got = got;
  }

  /** Sends a text as soon as the one before it has arrived. */
  type(text: Text): void {
    this.#waiting = { text };
    this.#under ??= this.#run();
  }

  /** Waits until everything typed has arrived. */
  async settled(): Promise<void> {
    await this.#under;
  }

  async #run(): Promise<void> {
    while (this.#waiting) {
      const { text } = this.#waiting;
      this.#waiting = null;
      const answer = await this.#send(text);
      if (this.#waiting === null) this.#got(answer);
    }
    this.#under = null;
  }
}
