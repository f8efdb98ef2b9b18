// One guard for the whole window: a tap or a press of Enter does nothing where what stands there has come, moved or
// changed its meaning within half a second. Keys of a pad stay as they are, so that fast typing goes through.
import { onCommand } from "../core/call";
import { type Point, Stood } from "./stood";

/** What a tap does something with. */
const CONTROLS = "button, input[type=file]";
/** Where a press of Enter can mean something, beside a control. */
const PLACES = "[role=dialog], input, textarea";
/** What Escape goes back from. */
const LAYERS = "[role=dialog], main";
/** What changes what a tap on a control does, beside its words. */
const STATES = ["aria-pressed", "aria-checked", "aria-expanded"];
/** Frames that are looked at after a change: what measures the room lays it out anew one or two frames later. */
const FOLLOWED = 3;

/** What a tap on a control does: the control's own words, in the places whose names say what they are about. */
function meaning(element: Element): string {
  const own =
    element.getAttribute("data-means") ??
    element.getAttribute("aria-label") ??
    (element.matches(CONTROLS) ? element.textContent : "");
  const words = [own, ...STATES.map((state) => element.getAttribute(state) ?? "")];
  for (let around = element.parentElement; around; around = around.parentElement) {
    words.push(around.getAttribute("aria-label") ?? "");
  }
  return words.join("\n");
}

/** Where a finger may touch a control, as shares of its width and height: its middle, and towards its corners. */
const PARTS = [
  [0.5, 0.5],
  [0.1, 0.1],
  [0.9, 0.1],
  [0.1, 0.9],
  [0.9, 0.9],
] as const;

/** Where it can be touched: at its middle or towards a corner nothing lies over it. */
function touchable(element: Element): DOMRect | null {
  const box = element.getBoundingClientRect();
  if (box.width === 0 || box.height === 0) return null;
  const open = PARTS.some(([right, down]) => {
    const hit = document.elementFromPoint(box.left + box.width * right, box.top + box.height * down);
    return hit !== null && element.contains(hit);
  });
  return open ? box : null;
}

/** The guard of a window. */
export interface Guard {
  /** Presses a control for a key that is no key of the control's own, where a tap on it would count. */
  press: (control: HTMLElement) => void;
  end: () => void;
}

/** Guards the window from now on. */
export function guardTaps(): Guard {
  const known = new WeakMap<Element, Stood>();
  /** Frames still to be looked at. */
  let ahead = 0;
  let frame = 0;
  let tapped: Stood | null = null;

  const stood = (element: Element) => {
    const found = known.get(element) ?? new Stood();
    known.set(element, found);
    return found;
  };

  function look() {
    const now = performance.now();
    for (const element of document.querySelectorAll(`${CONTROLS}, ${PLACES}, ${LAYERS}`)) {
      stood(element).note(now, { means: meaning(element), box: touchable(element) });
    }
  }

  function changed() {
    if (ahead === 0) frame = requestAnimationFrame(follow);
    ahead = FOLLOWED;
  }

  function follow() {
    // In between, the room is only measured.
    if (ahead === FOLLOWED || ahead === 1) look();
    ahead -= 1;
    if (ahead > 0) frame = requestAnimationFrame(follow);
  }

  function counts(element: Element, at: Point | null): boolean {
    if (ahead > 0) look();
    return stood(element).counts(performance.now(), at);
  }

  /** Whether it goes through; what does not ends here. */
  function goes(event: Event, element: Element, at: Point | null): boolean {
    if (counts(element, at)) return true;
    event.preventDefault();
    event.stopImmediatePropagation();
    return false;
  }

  function press(control: HTMLElement) {
    tapped = counts(control, null) ? stood(control) : null;
    if (tapped) control.click();
  }

  function click(event: MouseEvent) {
    const control = event.target instanceof Element ? event.target.closest(CONTROLS) : null;
    // What a script clicks was tapped by nobody.
    if (!control || !event.isTrusted) return;
    // A key clicks too, and at no place.
    const at = event.detail === 0 ? null : { x: event.clientX, y: event.clientY };
    tapped = goes(event, control, at) ? stood(control) : null;
  }

  function key(event: KeyboardEvent) {
    const target = event.target;
    if (event.key === "Escape") {
      const layer = [...document.querySelectorAll("[role=dialog]")].at(-1) ?? document.querySelector("main");
      if (layer) goes(event, layer, null);
      return;
    }
    if ((event.key !== "Enter" && event.key !== " ") || !(target instanceof Element)) return;
    if (target instanceof HTMLTextAreaElement || (event.key === " " && !target.matches(CONTROLS))) return;
    if (event.repeat) {
      // A key that is held presses once.
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    // On a control the click that follows is judged.
    if (target.matches(CONTROLS)) return;
    const place = target.closest(PLACES) ?? [...document.querySelectorAll("[role=dialog]")].at(-1);
    tapped = place && goes(event, place, null) ? stood(place) : null;
  }

  const changes = new MutationObserver(changed);
  changed();
  changes.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  const endCommands = onCommand(() => tapped?.asked(performance.now()));
  const during = new AbortController();
  const how = { capture: true, signal: during.signal };
  window.addEventListener("click", click, how);
  window.addEventListener("keydown", key, how);
  window.addEventListener("pointerdown", look, how);
  window.addEventListener("scroll", changed, how);
  window.addEventListener("resize", changed, how);
  // Letters that come late move what they are in, and nothing else says so.
  document.fonts.addEventListener("loadingdone", changed, how);
  const end = () => {
    changes.disconnect();
    cancelAnimationFrame(frame);
    endCommands();
    during.abort();
  };
  return { press, end };
}
