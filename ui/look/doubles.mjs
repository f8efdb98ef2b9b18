// Taps every button of every scene twice, 120 ms apart, as an oily glass or a hasty finger does: one tap's worth may come
// of it. The same button with the same words in the same place is tapped in one scene alone.
//
//   node look/doubles.mjs PAGES [--only NAME] [--size NAME]
import { scenes } from "./scenes.mjs";
import { drawn } from "./settled.mjs";
import { SIZES } from "./sizes.mjs";
import { openStage, pageOf, play } from "./stage.mjs";

const [pages, ...options] = process.argv.slice(2);
if (!pages) throw new Error("Name the folder of the pages.");
const option = (name, otherwise) => {
  const at = options.indexOf(name);
  return at < 0 ? otherwise : options[at + 1];
};
const { width, height, mm } = SIZES[option("--size", "10-inch")];
const only = option("--only", null);

/** Between two taps of a double tap. */
const APART_MS = 120;
/** Scenes that are played at a time. */
const HANDS = 4;
/** Commands that write what stays: the second tap calls none of them. */
const WRITES =
  /^(go_on|put_backup_plan|back_up|restore|salvage|start|enter|(put|remove)_(person|tool)|(give|set)_pin|name_device|(begin|drop|keep|check|export)_sheet|save_record)$/;

const stage = await openStage();
const tapped = new Set();
let wrong = 0;
const left = scenes.filter((scene) => !only || scene.name.startsWith(only));
// Most of the time is waiting, so several scenes are played beside each other.
const hand = async () => {
  for (let scene = left.shift(); scene; scene = left.shift()) await doubleTaps(scene);
};
await Promise.all(Array.from({ length: HANDS }, hand));
await stage.end();
console.log(`${tapped.size} buttons tapped twice, ${wrong} findings`);
process.exitCode = wrong === 0 ? 0 : 1;

async function doubleTaps(scene) {
  const page = await pageOf(scene, { ...stage, pages, width, height, mm });
  await page.addInitScript(watchTaps);
  let stands = false;
  for (;;) {
    if (!stands) await play(scene, page, stage.address);
    const target = await page.evaluate(nextTarget, [...tapped]);
    if (!target) break;
    tapped.add(target.means);
    stands = await doubleTap(scene, page, target).catch((error) => {
      // The first tap had the page loaded anew: nothing of it is left for the second.
      if (!error.message.includes("context was destroyed")) throw error;
      return false;
    });
  }
  await page.close();
}

/** Taps a target twice. Answers whether the scene still stands as it stood. */
async function doubleTap(scene, page, { x, y, means, stood }) {
  await page.evaluate(() => {
    window.__clock.goOn();
    window.__clock.stops = true;
    window.__hits.length = 0;
    window.__called.length = 0;
    window.__scrolled = false;
  });
  await page.mouse.click(x, y);
  await drawn(page);
  await drawn(page);
  // One tap may ask for more than one thing: to begin a step and to enter in it.
  const once = await page.evaluate((apart) => {
    window.__clock.set(apart);
    return window.__called.length;
  }, APART_MS);
  await page.mouse.click(x, y);
  await drawn(page);
  const { hits, called, stands } = await page.evaluate(
    (was) => ({
      hits: window.__hits,
      called: window.__called,
      stands: document.getElementById("app").innerHTML.length === was && !window.__scrolled,
    }),
    stood,
  );
  const says = means.split("\n")[0].replace(/\s+/g, " ").trim();
  const [first, second] = hits;
  const commands = called.slice(once).filter((name) => WRITES.test(name));
  if (first === undefined) fail(scene, `a tap on "${says}" does nothing`);
  if (second !== undefined && second !== first)
    fail(scene, `a double tap on "${says}" hits "${second.split("\n")[0]}" too`);
  if (commands.length > 0) fail(scene, `a double tap on "${says}" asks again: ${commands.join(", ")}`);
  return stands;
}

function fail(scene, what) {
  wrong += 1;
  console.log(`${scene.name}: ${what}`);
}

/** Runs in the page before it: what a tap goes through to, after the page's own guard. */
function watchTaps() {
  window.__hits = [];
  document.addEventListener("scroll", () => (window.__scrolled = true), true);
  const means = (control) => {
    const words = [
      control.dataset.means ?? control.ariaLabel ?? control.textContent,
      control.ariaPressed,
      control.ariaChecked,
    ];
    // A key of the keypads does the same in each of them.
    if (words[0].length === 1) return words[0];
    for (let around = control.parentElement; around; around = around.parentElement)
      words.push(around.ariaLabel);
    return words.map((word) => word ?? "").join("\n");
  };
  window.__means = means;
  document.addEventListener(
    "click",
    (event) => {
      const control = event.target.closest("button, input[type=file]");
      if (control && event.isTrusted) window.__hits.push(means(control));
      // No window of the system comes up for a file.
      if (control?.matches("input")) event.preventDefault();
    },
    true,
  );
}

/** Runs in the page: the next target that can be tapped and was not tapped yet, and how the page stands. */
function nextTarget(tapped) {
  const done = new Set(tapped);
  for (const control of document.querySelectorAll("button:not([disabled]), input[type=file]")) {
    const means = window.__means(control);
    if (done.has(means)) continue;
    const box = control.getBoundingClientRect();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    // At the edge of a place that scrolls a tap may land beside it.
    const hits = [y - 3, y, y + 3].map((down) => document.elementFromPoint(x, down));
    if (!hits.every((hit) => hit !== null && control.contains(hit))) continue;
    return { x, y, means, stood: document.getElementById("app").innerHTML.length };
  }
  return null;
}
