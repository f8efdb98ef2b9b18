// What a person sees of the page and where a finger lands, for the tests. It is put into the page from outside and
// changes nothing that is shown.
(() => {
  if (window.__eyes) return;

  const flat = (text) => (text ?? "").replace(/\s+/g, " ").trim();
  const words = (element) => flat(element.getAttribute("aria-label") ?? element.innerText);

  /** Calls to the core that are under way. */
  let under = 0;
  const fetch = window.fetch.bind(window);
  window.fetch = async (...args) => {
    under += 1;
    try {
      const answer = await fetch(...args);
      await answer.clone().arrayBuffer();
      return answer;
    } finally {
      setTimeout(() => {
        under -= 1;
      });
    }
  };

  // A person pauses between taps, which the page waits for. Its clock goes on by that much before each of them.
  const now = performance.now.bind(performance);
  let paused = 0;
  performance.now = () => now() + paused;
  const pause = () => {
    paused += 600;
  };
  for (const kind of ["mouseup", "keydown"]) addEventListener(kind, pause, true);

  /** Milliseconds from each tap to what it changed being painted: two frames after the first change. */
  const times = [];
  let tapped = null;
  const changed = () => {
    if (tapped === null) return;
    const { at, says } = tapped;
    tapped = null;
    requestAnimationFrame(() => requestAnimationFrame(() => times.push({ ms: performance.now() - at, says })));
  };
  addEventListener(
    "click",
    (event) => {
      const target = event.target.closest("button, label");
      tapped = { at: performance.now(), says: target ? words(target) : "" };
    },
    true,
  );
  new MutationObserver(changed).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  for (const kind of [HTMLInputElement, HTMLTextAreaElement]) {
    const value = Object.getOwnPropertyDescriptor(kind.prototype, "value");
    Object.defineProperty(kind.prototype, "value", {
      ...value,
      set(text) {
        value.set.call(this, text);
        changed();
      },
    });
  }

  /** Mistakes in the page's scripts, in words. */
  const mistakes = [];
  addEventListener("error", (event) => mistakes.push(event.message));
  addEventListener("unhandledrejection", (event) => mistakes.push(String(event.reason?.message ?? event.reason)));

  const all = (selector) => [...document.querySelectorAll(selector)].filter((element) => element.checkVisibility());

  /** Whether a finger put on its middle touches it. */
  function lands(element) {
    const box = element.getBoundingClientRect();
    const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
    return hit !== null && element.contains(hit);
  }

  /** The one of these that can be touched, scrolled to where it has to be. */
  function touchable(elements) {
    const found = [];
    for (const element of elements) {
      const there = lands(element);
      if (!there) element.scrollIntoView({ block: "nearest", behavior: "instant" });
      if (there || lands(element)) found.push({ element, scrolled: !there, closed: element.ariaDisabled === "true" });
    }
    return found;
  }

  /** The button that says this: just this; else begins with it; else has it in it. Two of them are none. */
  function button(said) {
    const buttons = all("button:not([disabled])");
    const ways = [(text) => text === said, (text) => text.startsWith(said), (text) => text.includes(said)];
    for (const way of ways) {
      const found = touchable(buttons.filter((each) => way(words(each))));
      if (found.length > 0) return found.length === 1 ? found[0] : null;
    }
    return null;
  }

  /** What can be touched at a selector. */
  const at = (selector) => touchable(all(selector))[0] ?? null;

  /** The field with this name. */
  const field = (name) => touchable(all("label").filter((label) => words(label).startsWith(name)))[0] ?? null;

  /** One of several, counted from 0. */
  const nth = (selector, place) => touchable(all(selector).slice(place, place + 1))[0] ?? null;

  /** What the window shows, by roles and names. */
  function see() {
    const main = all("button.main")[0];
    return {
      ready: document.querySelector("[data-ready]") !== null,
      step: all("section[aria-label]").map(words)[0] ?? null,
      dialogs: all("[role=dialog]").map((dialog) => flat(dialog.getAttribute("aria-label"))),
      main: main ? { says: words(main), closed: main.ariaDisabled === "true" } : null,
      said: all("[role=status], [role=alert]").map((each) => flat(each.innerText)).filter((text) => text !== ""),
      text: flat(document.body.innerText),
      mistakes,
    };
  }

  /** What is written on the topmost of what is laid over. */
  const dialog = () => flat(all("[role=dialog]").at(-1)?.innerText);

  /** Waits until something is there, and answers it; null when it does not come. */
  async function until(look, ms) {
    const end = performance.now() + ms;
    for (;;) {
      const found = look();
      if (found) return found;
      if (performance.now() > end) return null;
      await new Promise((next) => setTimeout(next, 15));
    }
  }

  /** Waits until no call is under way and what came is painted. */
  async function settled(ms) {
    const end = performance.now() + ms;
    let quiet = 0;
    while (quiet < 2) {
      await new Promise((next) => requestAnimationFrame(next));
      quiet = under === 0 ? quiet + 1 : 0;
      if (performance.now() > end) return false;
    }
    return true;
  }

  /** Waits until a pad is left: true; or until all is quiet and it still says something: that. */
  async function left(pad, ms) {
    const end = performance.now() + ms;
    for (let quiet = 0; performance.now() < end; quiet = under === 0 ? quiet + 1 : 0) {
      const on = all("[role=dialog]").at(-1);
      if (flat(on?.getAttribute("aria-label")) !== pad) return true;
      const said = [...on.querySelectorAll("[role=status]")].map((each) => flat(each.innerText)).join(" ").trim();
      // Half a second of quiet: the pad would have gone by now.
      if (said !== "" && quiet > 30) return said;
      await new Promise((next) => requestAnimationFrame(next));
    }
    return false;
  }

  /** Waits until a button opens, or until all is quiet and it is still closed. */
  async function opened(says, ms) {
    const end = performance.now() + ms;
    for (let quiet = 0; performance.now() < end; quiet = under === 0 ? quiet + 1 : 0) {
      if (button(says)?.closed === false) return true;
      // Half a second of quiet: what is typed is judged after less.
      if (quiet > 30) return false;
      await new Promise((next) => requestAnimationFrame(next));
    }
    return false;
  }

  window.__eyes = { button, dialog, at, field, nth, see, until, settled, pause, left, opened, times, all, words };
})();
