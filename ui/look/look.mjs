// Shows the built page in Chromium over a core that is played from JSON pages, looks at each screen with axe-core and
// saves its picture. Pages come from `panside-cli walk … --pages FOLDER`.
//
//   node look/look.mjs PAGES OUT [--only NAME] [--size NAME]
//
// The sizes are in sizes.mjs; it is a tablet of 10 inches unless said.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { clipped } from "./clipped.mjs";
import { reached, unreached } from "./reach.mjs";
import { scenes } from "./scenes.mjs";
import { SIZES, SOME } from "./sizes.mjs";
import { AXE, openStage, play, prepare } from "./stage.mjs";

const [pages, out, ...options] = process.argv.slice(2);
if (!pages || !out) throw new Error("Name the folder of the pages and the folder for the pictures.");
const option = (name, otherwise) => {
  const at = options.indexOf(name);
  return at < 0 ? otherwise : options[at + 1];
};
const size = SIZES[option("--size", "10-inch")];
if (!size) throw new Error(`The sizes are ${Object.keys(SIZES).join(", ")}.`);
const { width, height, mm, some, rules, other } = size;
const only = option("--only", null);
mkdirSync(out, { recursive: true });

const { browser, address, end } = await openStage();
let wrong = 0;
const wanted = scenes.filter(({ name }) => (only ? name.startsWith(only) : !some || SOME.has(name)));
// While one page waits until it is drawn, another one goes on.
const next = wanted.values();
await Promise.all([lookOn(next), lookOn(next)]);
await end();
writeFileSync(join(out, "looked.txt"), `${wrong} findings\n`);
console.log(`${wanted.length} scenes, ${wrong} findings, pictures in ${out}`);
process.exitCode = wrong === 0 ? 0 : 1;

/** Looks at scenes on one page, one after the other: it is drawn sooner than a new one. */
async function lookOn(scenes) {
  const page = await browser.newPage({ viewport: { width, height } });
  let name = "";
  page.on("pageerror", (error) => fail(name, `script: ${error.message}`));
  page.on("console", (message) => message.type() === "error" && fail(name, message.text()));
  for (const scene of scenes) {
    name = scene.name;
    const clear = await prepare(scene, { page, pages, mm });
    try {
      await play(scene, page, address);
    } catch (error) {
      fail(name, `it can't be played: ${error.message.split("\n")[0]}`);
    }
    await page.screenshot({ path: join(out, `${name}.png`) });
    for (const found of await findings(scene, page)) fail(name, found);
    await clear();
  }
}

/** Everything that is found on a scene that was played. */
async function findings(scene, page) {
  await page.addScriptTag({ url: AXE });
  const broken = await page.evaluate(brokenRules, { rules, other });
  const small = await page.evaluate(tooSmall, mm);
  const cut = [...(await page.evaluate(cutOff)), ...(await page.evaluate(clipped))];
  const keys = scene.keysOff ? await reached(page) : await unreached(page);
  return [...broken, ...small, ...cut, ...keys];
}

function fail(scene, what) {
  wrong += 1;
  console.log(`${scene}: ${what}`);
}

/** Runs in the page: what axe-core finds; `other` are the rules for the other light, the dark one where it is light. */
async function brokenRules({ rules, other }) {
  const broken = async (runOnly) =>
    (await window.axe.run(document, { runOnly, resultTypes: ["violations"] })).violations;
  const violations = await broken(rules);
  if (other) {
    const { dataset } = document.documentElement;
    const was = dataset.light;
    dataset.light = was === "dark" ? "light" : "dark";
    violations.push(...(await broken(other)));
    dataset.light = was;
  }
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, html }) => `${id}: ${help}: ${target} ${html.slice(0, 120)}`),
  );
}

/** Runs in the page: what warns and can't be read whole, as far as nobody can scroll to the rest. */
function cutOff() {
  const found = [];
  for (const text of document.querySelectorAll(".call, .call .text, .caution p")) {
    const box = text.getBoundingClientRect();
    const place = text.parentElement.getBoundingClientRect();
    const outside = Math.max(
      place.top - box.top,
      box.bottom - place.bottom,
      text.scrollWidth - text.clientWidth,
    );
    if (outside > 1)
      found.push(`warning "${text.textContent.trim().slice(0, 40)}" is cut off by ${outside} px`);
  }
  return found;
}

/** Runs in the page: targets and texts that are smaller than a gloved finger and an arm's length want. */
function tooSmall(mm) {
  const found = [];
  const seen = (element) =>
    element.checkVisibility({ visibilityProperty: true }) && !element.closest(".unseen");
  const name = (element) => (element.ariaLabel ?? element.textContent ?? "").trim().slice(0, 40);
  for (const target of document.querySelectorAll("button, input, textarea, [role=button], label.target")) {
    if (!seen(target) || target.classList.contains("unseen")) continue;
    const box = target.getBoundingClientRect();
    const least = 15 * mm - 0.6;
    if (box.width < least || box.height < least) {
      found.push(
        `target "${name(target)}" is ${(box.width / mm).toFixed(1)} × ${(box.height / mm).toFixed(1)} mm`,
      );
    }
  }
  for (const element of document.querySelectorAll("#app *")) {
    const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== "");
    if (!own || !seen(element)) continue;
    const size = Number.parseFloat(getComputedStyle(element).fontSize);
    const scale = element instanceof SVGElement ? (element.getScreenCTM()?.a ?? 1) : 1;
    if (size * scale < 15.9) found.push(`text "${name(element)}" is ${(size * scale).toFixed(1)} px`);
  }
  return found;
}
