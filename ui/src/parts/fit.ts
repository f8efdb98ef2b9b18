// What fits: text that must be read whole, as large as its place lets it be, and columns.

/** The size of ordinary text in CSS pixels; it grows with the window's room (`app.css`). */
export function rem(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
}

/** How many columns of at least `least` stand in `width` with `gap` between them; one where none does. */
export function columns(width: number, least: number, gap: number): number {
  return Math.max(1, Math.floor((width + gap) / (least + gap)));
}

/** The largest whole size from `most` down to `least` that fits; `least` where none does. */
export function largest(most: number, least: number, fits: (size: number) => boolean): number {
  for (let size = most; size > least; size -= 1) {
    if (fits(size)) return size;
  }
  return least;
}

/** Attached to a text: keeps it as large as the height of what holds it allows, in CSS pixels. */
export function fitting(most: number, least: number) {
  return (text: HTMLElement) => {
    const place = text.parentElement;
    if (!place) return;
    const fits = (size: number) => {
      text.style.fontSize = `${size}px`;
      return text.offsetHeight <= place.clientHeight;
    };
    const fit = () => {
      text.style.fontSize = `${largest(most, least, fits)}px`;
    };
    const sizes = new ResizeObserver(fit);
    sizes.observe(place);
    // Letters that come late are of another width.
    void document.fonts.ready.then(fit);
    return () => sizes.disconnect();
  };
}
