// Places that scroll: whether something lies below what is seen, so that nobody has to find out by trying.
import { getContext, setContext } from "svelte";
import type { Attachment } from "svelte/attachments";

const WITHIN = Symbol("within");

/** How a place scrolls. */
export interface Scrolls {
  /** It holds more than is seen. Then keys must reach it too. */
  at_all: boolean;
  /** Something lies below what is seen. */
  below: boolean;
}

/** What lies less than this below the edge, in CSS pixels, is a rest of rounding and no content. */
const REST = 8;

/** How a place with these heights scrolls. */
export function scrolls(place: Pick<Element, "scrollTop" | "clientHeight" | "scrollHeight">): Scrolls {
  return {
    at_all: place.scrollHeight > place.clientHeight + REST,
    below: place.scrollTop + place.clientHeight < place.scrollHeight - REST,
  };
}

/** Attached to a place: tells how it scrolls, and again whenever it, what is in it or where it stands has changed. */
export function watching(tell: (now: Scrolls) => void) {
  return (place: Element) => {
    const look = () => tell(scrolls(place));
    const sizes = new ResizeObserver(look);
    const observe = () => {
      sizes.disconnect();
      sizes.observe(place);
      for (const child of place.children) sizes.observe(child);
    };
    const children = new MutationObserver(observe);
    children.observe(place, { childList: true });
    place.addEventListener("scroll", look, { passive: true });
    observe();
    return () => {
      sizes.disconnect();
      children.disconnect();
      place.removeEventListener("scroll", look);
    };
  };
}

/** Given by what offers to scroll on: attached to a place within it that scrolls in its stead. */
export function giveWithin(attached: Attachment<HTMLElement>): void {
  setContext(WITHIN, attached);
}

/** What is attached to a place that scrolls within something that offers to scroll on; nothing where nothing does. */
export function within(): Attachment<HTMLElement> | undefined {
  return getContext<Attachment<HTMLElement> | undefined>(WITHIN);
}

/** Whether something is laid over the place, so that keys are not meant for it. */
export function liesBelow(place: Element): boolean {
  return place.closest("[inert]") !== null;
}

/** Scrolls a place on by most of what is seen, so that the last line seen is still there. */
export function onward(place: Element): void {
  place.scrollBy({ top: place.clientHeight * 0.8, behavior: "smooth" });
}
