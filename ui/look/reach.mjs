// By keys alone: Tab comes to everything that can be pressed or typed at, and what has the focus is seen and marked.
import { drawn } from "./settled.mjs";

/** Nobody goes through more than this. */
const MOST = 250;

/** What keys can't reach on the screen as it is, and where the focus is not seen. */
export async function unreached(page) {
  // What is found by a hand so fast that the page can't draw meanwhile is looked at once more by a slow one.
  return (await goRound(page, fast)).length === 0 ? [] : goRound(page, slow);
}

/** What keys reach on a screen that lets no key through. */
export async function reached(page) {
  await page.evaluate(begin);
  await page.keyboard.press("Tab");
  return page.evaluate(() => {
    const active = document.activeElement;
    return active === document.body
      ? []
      : [`keys reach "${(active.ariaLabel ?? active.textContent).trim()}"`];
  });
}

async function goRound(page, hand) {
  const wanted = await page.evaluate(begin);
  const found = await hand(page, Math.min(wanted * 2 + 10, MOST));
  const left = await page.evaluate(() =>
    [...window.__left]
      .filter((one) => one.isConnected)
      .map((one) => (one.ariaLabel ?? one.textContent).trim().slice(0, 40)),
  );
  return [...new Set(found), ...left.map((name) => `keys don't reach "${name}"`)];
}

/** Each key comes from outside, and is drawn before the next. */
async function slow(page, most) {
  const found = [];
  for (let at = 0; at < most; at += 1) {
    await page.keyboard.press("Tab");
    await drawn(page);
    const { over, wrong } = await page.evaluate(() => window.__came());
    if (wrong) found.push(wrong);
    if (over) break;
  }
  return found;
}

/** The first key comes from outside, so that the page knows that there are keys; the rest are made in the page. */
async function fast(page, most) {
  await page.keyboard.press("Tab");
  return page.evaluate(async (times) => {
    const found = [];
    for (let at = 0; at < times; at += 1) {
      const { over, wrong } = window.__came();
      if (wrong) found.push(wrong);
      if (over) break;
      const tab = new KeyboardEvent("keydown", { key: "Tab", bubbles: true, cancelable: true });
      (document.activeElement ?? document.body).dispatchEvent(tab);
      // What follows from it is done before the next.
      await new Promise((done) => setTimeout(done));
    }
    return found;
  }, most);
}

/** Runs in the page: what is to be reached, as a number; and what looks where the focus has come to. */
function begin() {
  const controls = [...document.querySelectorAll("button, input, textarea")].filter(
    (one) => !one.disabled && !one.closest("[inert]") && one.checkVisibility({ visibilityProperty: true }),
  );
  window.__left = new Set(controls);
  window.__came = came;
  document.activeElement?.blur();
  return controls.length;

  function came() {
    const active = document.activeElement;
    if (!active || active === document.body) return { over: false, wrong: null };
    if (!window.__left.delete(active) && window.__left.size === 0) return { over: true, wrong: null };
    const marked = [active, active.closest("label")].some((one) => {
      const style = one && getComputedStyle(one);
      return (
        style &&
        ((style.outlineStyle !== "none" && style.outlineWidth !== "0px") || style.boxShadow !== "none")
      );
    });
    const box = (active.type === "file" ? active.closest("label") : active).getBoundingClientRect();
    const hit = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    const seen = hit !== null && (active.contains(hit) || (active.closest("label")?.contains(hit) ?? false));
    const name = `"${(active.ariaLabel ?? active.textContent).trim().slice(0, 40)}" (${active.className})`;
    if (!marked) return { over: false, wrong: `the focus on ${name} is not marked` };
    return { over: false, wrong: seen ? null : `the focus on ${name} is covered` };
  }
}
