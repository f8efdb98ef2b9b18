// The scenes without hands on the glass: by keys alone, by a remote, and with numbers that an instrument types.
import { drawn, settled } from "./settled.mjs";
import { entry, says } from "./taps.mjs";

/** Presses keys one after the other, with a look at the screen between them. */
const keys =
  (...names) =>
  async (page) => {
    for (const name of names) {
      await page.keyboard.press(name);
      await drawn(page);
      await drawn(page);
    }
  };
/** As an instrument types: all at once, and Enter. */
const sends = (text) => async (page) => {
  await page.evaluate((sent) => {
    const at = document.activeElement ?? document.body;
    // An event is as old as its making: made beforehand, they are close however slow the page is with each.
    const made = [...sent, "Enter"].map(
      (key) => new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }),
    );
    for (const event of made) {
      const { key } = event;
      const types = at.dispatchEvent(event);
      if (types && key.length === 1 && at instanceof HTMLInputElement)
        document.execCommand("insertText", false, key);
    }
  }, text);
  await drawn(page);
};
/** The focus is where it belongs, and is seen there. */
const focusOn = (wanted) => async (page) => {
  await settled(page);
  const has = await page.evaluate((selector) => {
    const active = document.activeElement;
    const seen = active?.matches(":focus-visible") ?? false;
    return active?.matches(selector) && seen ? null : `${active?.outerHTML.slice(0, 160)}, seen: ${seen}`;
  }, wanted);
  if (has) throw new Error(`the focus is on ${has}`);
};
/** Something is said on the screen. */
const isSaid = (words) => async (page) => {
  await page.getByText(words).first().waitFor({ timeout: 2_000 });
};
/** A field holds this text. */
const holds = (text) => async (page) => {
  await settled(page);
  const found = await page.evaluate(() => [...document.querySelectorAll("input")].map((one) => one.value));
  if (!found.includes(text)) throw new Error(`no field holds ${text}: ${found}`);
};

const remote = { next: "F5", do: "F6", back: "F7" };
const row = (id) => `[data-row$="/${id}"]`;
const inside = says("12.6 V is from 12.4 V to 12.9 V (battery at rest).");
const section = async (page) => {
  await page.getByText("Remote keys").scrollIntoViewIfNeeded();
  await drawn(page);
};

export const hands = [
  { name: "setup-remote", where: { screen: "setup" }, taps: [section] },
  {
    name: "setup-remote-learns",
    where: { screen: "setup", remote: { ...remote, do: null } },
    taps: [/Choose a key.*: Press/, keys("7"), isSaid("The key 7 is needed for typing."), section],
  },
  {
    name: "setup-remote-taken",
    where: { screen: "setup", remote },
    taps: [/Change.*: Next/, keys("F7"), isSaid("This key is already the one for Back."), section],
  },
  {
    name: "setup-remote-chosen",
    where: { screen: "setup" },
    taps: [/Choose a key.*: Back/, keys("PageUp"), isSaid("Page Up is the key for Back."), section],
  },
  {
    name: "keys-pad",
    page: "begin bay_ready",
    answers: inside,
    taps: [
      keys("Tab"),
      focusOn(row("rest")),
      keys("Enter"),
      focusOn(".number input"),
      keys("1", "2", "Escape"),
      focusOn(row("rest")),
    ],
  },
  {
    name: "keys-overlay",
    page: "work cover_and_harness 2",
    taps: [
      "More",
      keys("Escape", "Tab"),
      (page) => page.locator("button.more").focus(),
      keys("Enter"),
      focusOn("[role=dialog] button"),
      keys("Escape"),
      focusOn(".more"),
      keys("Enter"),
    ],
  },
  {
    name: "keys-screens",
    where: { screen: "sheet" },
    page: "work cover_and_harness 2",
    taps: [keys("Escape"), isSaid("Job")],
  },
  {
    name: "remote-pad",
    page: "begin bay_ready",
    where: { remote },
    answers: inside,
    taps: [
      keys("F5"),
      focusOn(row("rest")),
      keys("F6"),
      focusOn(".number input"),
      keys("F7"),
      focusOn(row("rest")),
      keys("F5"),
    ],
  },
  {
    name: "sent-reading",
    page: "begin bay_ready",
    answers: inside,
    taps: [entry("rest"), settled, sends("12.6 V"), holds("12.6"), settled],
  },
  {
    name: "sent-unit",
    page: "begin bay_ready",
    answers: says('"12.6 bar": "bar" is no part of a number.', { class: null }),
    taps: [
      entry("rest"),
      settled,
      sends("12.6bar"),
      isSaid('This takes V, mV, not "bar".'),
      holds("12.6 bar"),
    ],
  },
  {
    name: "sent-overload",
    page: "begin coils_warm",
    answers: says("OL at 20 °C: open."),
    taps: [entry("coils"), settled, (page) => page.getByLabel("shift 1").focus(), sends("OL kΩ"), settled],
  },
  {
    name: "sent-torque",
    page: "begin pan_torque",
    answers: says("Stage 2 has no setting.", { class: null }),
    taps: [entry("pan"), settled, "wrench B", sends("4.0Nm"), holds("4.0")],
  },
  { name: "sent-nowhere", page: "begin bay_ready", taps: [sends("12.6 V"), isSaid('"12.6 V" came in')] },
];
