// Text that can't be read whole, or that is printed over its neighbor.

/** Runs in the page: texts that are cut off where nobody can scroll to the rest, or that stand out of their place. */
export function clipped() {
  const found = new Set();
  const name = (text) => text.replace(/\s+/g, " ").trim().slice(0, 60);
  const hides = (value) => value === "hidden" || value === "clip";
  const scrolls = (value) => value === "auto" || value === "scroll";
  const shown = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const text = texts.currentNode;
    const parent = text.parentElement;
    if (text.data.trim() === "" || parent.closest(".unseen, script, style")) continue;
    if (!parent.checkVisibility({ visibilityProperty: true })) continue;
    const range = document.createRange();
    range.selectNodeContents(text);
    const at = range.getBoundingClientRect();
    if (at.width === 0) continue;
    shown.push({ data: text.data, parent, at: within(parent, at) });
    // A place that scrolls sideways or down can be scrolled to the rest.
    let down = true;
    for (let place = parent; place && place.id !== "app"; place = place.parentElement) {
      const style = getComputedStyle(place);
      if (place instanceof SVGElement || style.display === "inline" || style.display === "contents") continue;
      if (scrolls(style.overflowX) && place.scrollWidth > place.clientWidth) break;
      const box = place.getBoundingClientRect();
      if (at.right > box.right + 2 || at.left < box.left - 2) {
        found.add(`text "${name(text.data)}" is wider than its place`);
        break;
      }
      if (scrolls(style.overflowY)) down = false;
      if (down && hides(style.overflowY) && (at.bottom > box.bottom + 4 || at.top < box.top - 4)) {
        found.add(`text "${name(text.data)}" is cut off below`);
        break;
      }
      const short = style.textOverflow === "ellipsis" && place.scrollWidth > place.clientWidth + 1;
      if (short && place.contains(parent)) {
        found.add(`text "${name(text.data)}" ends in dots`);
        break;
      }
    }
  }
  for (const [one, other] of over(shown)) {
    found.add(`text "${name(one.data)}" is printed over "${name(other.data)}"`);
  }
  return [...found];

  /** What of a place is not scrolled out of sight. */
  function within(parent, { left, right, top, bottom }) {
    const seen = { left, right, top, bottom };
    for (let place = parent; place; place = place.parentElement) {
      if (!scrolls(getComputedStyle(place).overflowY)) continue;
      const box = place.getBoundingClientRect();
      seen.top = Math.max(seen.top, box.top);
      seen.bottom = Math.min(seen.bottom, box.bottom);
    }
    return seen;
  }

  /** Whether a text can be seen in the middle of it: nothing that is painted lies over it. */
  function seen({ parent, at }) {
    for (const layer of document.elementsFromPoint((at.left + at.right) / 2, (at.top + at.bottom) / 2)) {
      if (layer === parent) return true;
      if (parent.contains(layer)) continue;
      // What holds it is found without it: it is scrolled out of sight there.
      if (layer.contains(parent)) return false;
      const { backgroundColor } = getComputedStyle(layer);
      if (backgroundColor !== "rgba(0, 0, 0, 0)") return false;
    }
    return false;
  }

  /** Pairs of texts that stand where the other does. */
  function over(texts) {
    const there = texts.filter(seen);
    return there.flatMap((one, number) =>
      there.slice(number + 1).flatMap((other) => {
        const wide = Math.min(one.at.right, other.at.right) - Math.max(one.at.left, other.at.left);
        const high = Math.min(one.at.bottom, other.at.bottom) - Math.max(one.at.top, other.at.top);
        return wide > 3 &&
          high > 6 &&
          !one.parent.contains(other.parent) &&
          !other.parent.contains(one.parent)
          ? [[one, other]]
          : [];
      }),
    );
  }
}
