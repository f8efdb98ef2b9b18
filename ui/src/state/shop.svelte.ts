// The shop as the core last showed it, and who of it works now.
import { asTrouble } from "../core/call";
import type { Actor, PersonId, PinHolder, Setup } from "../core/types";
import { whoWorks } from "./people";
import { pins } from "./pin.svelte";
import { remembered } from "./remembered.svelte";
import { troubles } from "./troubles.svelte";

/** What is shown of the shop until the core has said what there is. */
const NO_SETUP: Setup = {
  people: [],
  left: [],
  tools: [],
  tools_off: [],
  device: { id: "", name: null },
  seen: {},
  unsettled: [],
};

class Shop {
  setup = $state.raw<Setup>(NO_SETUP);
  /** Who has a PIN. */
  pins = $state.raw<PinHolder[]>([]);

  /** Who works now. */
  get actor(): Actor | null {
    return remembered.actor;
  }

  /** Says who works now. */
  work({ id, role }: Actor): void {
    remembered.put({ actor: { id, role } });
  }

  /** Does what the core may ask PINs for, and does it again each time that one is given. */
  async withPin<T>(work: () => Promise<T>): Promise<T | null> {
    try {
      return await work();
    } catch (error) {
      const trouble = asTrouble(error);
      if (trouble.pin_of) return (await pins.ask(trouble.pin_of)) ? this.withPin(work) : null;
      troubles.last = trouble;
      return null;
    }
  }

  /** Changes the shop's list as who works now, and shows what it is then; nothing when it stayed as it was. */
  async changeSetup(work: (who: PersonId | null) => Promise<Setup>): Promise<Setup | null> {
    const setup = await this.withPin(() => work(this.actor?.id ?? null));
    if (!setup) return null;
    this.setup = setup;
    remembered.put({ actor: whoWorks(setup.people, this.actor) });
    return setup;
  }
}

export const shop = new Shop();
