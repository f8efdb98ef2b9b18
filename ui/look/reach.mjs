// By keys alone: Tab comes to everything that can be pressed or typed at, and what has the focus is seen and marked.

/** Nobody goes through more than this. */
const MOST = 250;

/** What keys can't reach on the screen as it is, and where the focus is not seen. */
export async function unreached(page) {
  const wanted = await page.evaluate(() => {
    const controls = [...document.querySelectorAll("button, input, textarea")].filter(
      (one) => !one.disabled && !one.closest("[inert]") && one.checkVisibility({ visibilityProperty: true }),
    );
    window.__left = new Set(controls);
    document.activeElement?.blur();
    return controls.length;
  });
  const found = [];
  for (let at = 0; at < Math.min(wanted * 2 + 10, MOST); at += 1) {
    await page.keyboard.press("Tab");
    const { over, wrong } = await page.evaluate(came);
    if (wrong) found.push(wrong);
    if (over) break;
  }
  const left = await page.evaluate(() =>
    [...window.__left]
      .filter((one) => one.isConnected)
      .map((one) => (one.ariaLabel ?? one.textContent).trim().slice(0, 40)),
  );
  return [...new Set(found), ...left.map((name) => `keys don't reach "${name}"`)];
}

/** Runs in the page: where the focus has come to. */
function came() {
  const active = document.activeElement;
  if (!active || active === document.body) return { over: false, wrong: null };
  if (!window.__left.delete(active) && window.__left.size === 0) return { over: true, wrong: null };
  const marked = [active, active.closest("label")].some((one) => {
    const style = one && getComputedStyle(one);
    return (
      style && ((style.outlineStyle !== "none" && style.outlineWidth !== "0px") || style.boxShadow !== "none")
    );
  });
  const box = (active.type === "file" ? active.closest("label") : active).getBoundingClientRect();
  const hit = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
  const seen = hit !== null && (active.contains(hit) || (active.closest("label")?.contains(hit) ?? false));
  const name = `"${(active.ariaLabel ?? active.textContent).trim().slice(0, 40)}" (${active.className})`;
  if (!marked) return { over: false, wrong: `the focus on ${name} is not marked` };
  return { over: false, wrong: seen ? null : `the focus on ${name} is covered` };
}
