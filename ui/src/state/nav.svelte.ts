// Where the window is: the screen, the step that is looked at, what is laid over it, the pad that is open.
import type { StepView } from "../core/types";
import { currentJob } from "./currentJob.svelte";
import { stepToShow } from "./focus";
import { remembered } from "./remembered.svelte";
import { troubles } from "./troubles.svelte";
import type { Overlay, Screen, SheetAt } from "./where";

class Nav {
  /** Where somebody came from to a screen that is only for something that was missing there. */
  #from = $state<{ screen: Screen; overlay: Overlay | null } | null>(null);

  /** The screen to go straight back to; null: nobody came from one. */
  get from(): Screen | null {
    return this.#from?.screen ?? null;
  }

  get screen(): Screen {
    return remembered.screen;
  }

  /** The step that is looked at. */
  get step(): StepView | null {
    const { page } = currentJob;
    if (!page) return null;
    const at = remembered.steps[page.job];
    return page.view.steps.find((step) => step.id === at) ?? stepToShow(page.view, null);
  }

  /** What is laid over the step sheet. */
  get overlay(): Overlay | null {
    return remembered.overlay;
  }

  set overlay(overlay: Overlay | null) {
    remembered.put({ overlay });
  }

  /** The entry of the step looked at whose pad is open. */
  get pad(): string | null {
    const { pad } = remembered;
    return pad !== null && pad.step === this.step?.id ? pad.entry : null;
  }

  set pad(entry: string | null) {
    const step = this.step?.id;
    remembered.put({ pad: entry !== null && step !== undefined ? { step, entry } : null });
  }

  /** The spec sheet that is looked at. */
  get sheet(): SheetAt | null {
    return remembered.sheet;
  }

  /** Goes to a screen for what is missing here, and can go straight back. */
  aside(screen: Screen): void {
    const from = { screen: this.screen, overlay: this.overlay };
    this.go(screen);
    this.#from = from;
  }

  /** Goes back to where somebody came from. */
  back(): void {
    const from = this.#from;
    if (!from) return;
    this.go(from.screen);
    remembered.put({ overlay: from.overlay });
  }

  /** Goes to a screen. */
  go(screen: Screen): void {
    this.#from = null;
    troubles.refused = null;
    remembered.put({ screen, overlay: null });
  }

  /** Looks at a step, whether or not it can be begun. */
  lookAt(step: string): void {
    troubles.refused = null;
    const job = currentJob.page?.job;
    const { steps, pad } = remembered;
    remembered.put({
      screen: "job",
      steps: job === undefined ? steps : { ...steps, [job]: step },
      overlay: null,
      pad: pad?.step === step ? pad : null,
    });
  }

  /** Looks at a spec sheet, or at another place of it. */
  lookAtSheet(sheet: SheetAt): void {
    remembered.put({ sheet, screen: "sheet" });
  }
}

export const nav = new Nav();
