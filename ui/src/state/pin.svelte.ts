// Asking somebody's PIN. It goes to the core and is kept nowhere here: no draft, no setting, no field that remembers.
import type { PersonId } from "../core/types";

/** Whose PIN is asked, and who waits for it. */
interface Asked {
  person: PersonId;
  answer: (given: boolean) => void;
}

class Pins {
  /** What is asked now. */
  asked = $state.raw<Asked | null>(null);

  /** Asks a person's PIN. Answers whether it was given; false when they went back. */
  ask(person: PersonId): Promise<boolean> {
    this.asked?.answer(false);
    return new Promise((answer) => {
      this.asked = { person, answer };
    });
  }

  /** The right one was given, or nobody gave it. */
  end(given: boolean): void {
    const { asked } = this;
    this.asked = null;
    asked?.answer(given);
  }
}

export const pins = new Pins();
