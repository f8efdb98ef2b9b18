// Waiting by what the page does and not by the clock of who looks at it, so that a slow machine sees the same.

/** Nothing changes for so long, by the page's own timers: longer than it waits for typing to pause. */
const QUIET_MS = 200;

/** A page that never comes to rest is looked at as it is. */
const LONGEST_MS = 30_000;

/** What a tap changed is drawn. */
export const drawn = (page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Presses what can be closed too: it says why. It is scrolled to first, as a person does. */
export async function press(page, button) {
  await button.scrollIntoViewIfNeeded();
  await drawn(page);
  await button.click({ force: true });
}

/** Nothing moves any more: what was asked is answered and shown, and scrolling has ended. */
export const settled = (page) =>
  page.evaluate(
    ({ quiet, longest }) =>
      new Promise((done) => {
        let rest;
        const over = () => {
          changes.disconnect();
          document.removeEventListener("scroll", again, true);
          clearTimeout(rest);
          clearTimeout(last);
          done();
        };
        const again = () => {
          clearTimeout(rest);
          rest = setTimeout(over, quiet);
        };
        const changes = new MutationObserver(again);
        changes.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
        document.addEventListener("scroll", again, true);
        const last = setTimeout(over, longest);
        again();
      }),
    { quiet: QUIET_MS, longest: LONGEST_MS },
  );
