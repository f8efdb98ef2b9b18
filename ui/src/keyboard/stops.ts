// What can have the focus on the screen as it is now, and where the focus goes when the screen has changed.
import { after, ordered, type Way } from "./order";

const CONTROLS = "button, input, textarea";
/** Places that scroll. There is nothing to do there but to read on. */
const SCROLLED = "[tabindex='0']";

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
function stopsIn(place: Element, selector = CONTROLS): HTMLElement[] {
  const controls = [...place.querySelectorAll<HTMLElement>(selector)];
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
  focusOn(stopsIn(place)[0] ?? null);
}

/** Puts the focus on the next thing of what lies on top. */
export function focusNext(): void {
  focusOn(after(stopsIn(topLayer()), focused()));
}

/** Goes through the whole window, what lies on top first. */
export function focusByTab(way: Way): void {
  const top = topLayer();
  const selector = `${CONTROLS}, ${SCROLLED}`;
  const around = stopsIn(document.body, selector).filter((stop) => !top.contains(stop));
  focusOn(after([...stopsIn(top, selector), ...around], focused(), way));
}

function focusOn(control: HTMLElement | null): void {
  if (!control) return;
  control.focus();
  // A file's field is not seen itself: its label is.
  (control.closest("label") ?? control).scrollIntoView({ block: "nearest" });
}
