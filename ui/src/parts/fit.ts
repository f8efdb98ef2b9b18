// Text that must be read whole, as large as its place lets it be.

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
