// What can have the focus on the screen as it is now, and where the focus goes when the screen has changed.
import { after, ordered } from "./order";

const CONTROLS = "button, input, textarea";

/** Whether somebody works by keys, so that the focus is led: on the glass it would only open the tablet's own keyboard. */
export const hands = { useKeys: false };

/** What lies on top: the last dialog that nothing covers, else the whole window. */
export function topLayer(): Element {
  return topDialog() ?? document.body;
}

/** The dialog on top; nothing where none is open. */
export function topDialog(): Element | null {
  const dialogs = [...document.querySelectorAll("[role=dialog]")];
  return dialogs.filter((dialog) => !dialog.closest("[inert]")).at(-1) ?? null;
}

/** Everything in a place that can be pressed or typed at, in the order in which it is gone through. */
export function stopsIn(place: Element): HTMLElement[] {
  const controls = [...place.querySelectorAll<HTMLElement>(CONTROLS)];
  return ordered(controls.filter(canHaveFocus), (control) => ({
    asked: control.matches("[data-asked], input, textarea"),
    main: control.matches(".next, .main, .ends"),
    key: control.closest("[data-keys]") !== null,
  }));
}

function canHaveFocus(control: HTMLElement): boolean {
  return (
    !control.matches(":disabled, [tabindex='-1']") &&
    !control.closest("[inert]") &&
    control.checkVisibility({ visibilityProperty: true })
  );
}

/** What has the focus; nothing where the focus is nowhere. */
export function focused(): HTMLElement | null {
  const active = document.activeElement;
  return active instanceof HTMLElement && active !== document.body ? active : null;
}

/** Puts the focus on the first thing of a place. */
export function focusFirst(place: Element = topLayer()): void {
  stopsIn(place)[0]?.focus();
}

/** Puts the focus on the next thing of what lies on top. */
export function focusNext(): void {
  after(stopsIn(topLayer()), focused())?.focus();
}
