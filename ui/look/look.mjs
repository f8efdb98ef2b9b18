// Shows the built page in Chromium over a core that is played from JSON pages, looks at each screen with axe-core and
// saves its picture. Pages come from `panside-cli walk … --pages FOLDER`.
//
//   node look/look.mjs PAGES OUT [--only NAME] [--size 1280x800] [--mm 6.3]

import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { LUND, MARL, ODE } from "./people.mjs";
import { scenes } from "./scenes.mjs";
import { drawn, settled } from "./settled.mjs";

const here = fileURLToPath(new URL(".", import.meta.url));
const [pages, out, ...options] = process.argv.slice(2);
if (!pages || !out) throw new Error("Name the folder of the pages and the folder for the pictures.");
const option = (name, otherwise) => {
  const at = options.indexOf(name);
  return at < 0 ? otherwise : options[at + 1];
};
const [width, height] = option("--size", "1280x800").split("x").map(Number);
const mm = Number(option("--mm", String(160 / 25.4)));
const only = option("--only", null);
mkdirSync(out, { recursive: true });

const types = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
};
const server = createServer((request, response) => {
  const path = new URL(request.url, "http://x").pathname;
  if (path === "/favicon.ico") return response.writeHead(204).end();
  try {
    const body = readFileSync(join(here, "../dist", path === "/" ? "index.html" : path));
    response.writeHead(200, { "content-type": types[extname(path)] ?? "text/html" }).end(body);
  } catch {
    response.writeHead(404).end();
  }
}).listen(0);
const address = `http://localhost:${server.address().port}/`;
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });

const read = (name) => JSON.parse(readFileSync(join(pages, `${name}.json`), "utf8"));
let wrong = 0;
for (const scene of scenes) {
  if (only && !scene.name.startsWith(only)) continue;
  const page = await browser.newPage({ viewport: { width, height } });
  page.on("pageerror", (error) => fail(scene.name, `script: ${error.message}`));
  page.on("console", (message) => message.type() === "error" && fail(scene.name, message.text()));
  const job = scene.page === undefined ? null : read(scene.page);
  scene.change?.(job);
  await page.addInitScript(playCore, {
    job,
    record: read("record"),
    figures: read(scene.figures ?? "figures"),
    where: {
      screen: "job",
      steps: job && scene.step ? { [job.job]: scene.step } : {},
      actor: { id: ODE, role: "technician" },
      dark: false,
      mm,
      ...scene.where,
    },
    answers: scene.answers ?? {},
    pins: scene.pins ?? [LUND],
    setup: scene.setup ?? {},
    troubles: scene.troubles ?? { said: [], go_on: false, troubled: false },
    people: [ODE, MARL, LUND],
  });
  await page.goto(address);
  await page.waitForSelector("[data-ready]");
  for (const step of scene.taps ?? []) {
    if (typeof step === "function") await step(page);
    else await page.getByRole("button", { name: step }).first().click();
    await drawn(page);
  }
  await settled(page);
  await page.screenshot({ path: join(out, `${scene.name}.png`) });
  await page.evaluate(axe);
  const found = await page.evaluate(() =>
    // @ts-expect-error axe was just put there
    axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "wcag2aaa", "best-practice"],
    }),
  );
  for (const violation of found.violations) {
    for (const node of violation.nodes)
      fail(scene.name, `${violation.id}: ${violation.help}: ${node.target} ${node.html.slice(0, 120)}`);
  }
  for (const small of await page.evaluate(tooSmall, mm)) fail(scene.name, small);
  for (const cut of await page.evaluate(cutOff)) fail(scene.name, cut);
  await page.close();
}
await browser.close();
server.close();
writeFileSync(join(out, "looked.txt"), `${wrong} findings\n`);
console.log(`${scenes.length} scenes, ${wrong} findings, pictures in ${out}`);
process.exitCode = wrong === 0 ? 0 : 1;

function fail(scene, what) {
  wrong += 1;
  console.log(`${scene}: ${what}`);
}

/** Runs in the page: answers the commands from the pages. */
function playCore({
  job,
  record,
  figures,
  where,
  answers,
  pins,
  troubles,
  setup: setupIs,
  people: [ode, marl, lund],
}) {
  const line = job && {
    job: job.job,
    repair_order: job.view.repair_order,
    label: job.view.label,
    demo: job.view.demo,
    ended: false,
    events: job.head.seq,
  };
  const setup = {
    people: [
      { id: ode, name: "R. Ode", roles: ["technician"], lead: false },
      { id: marl, name: "T. Marl", roles: ["second_person"], lead: false },
      { id: lund, name: "K. Lund", roles: ["service_writer"], lead: true },
    ],
    left: [],
    tools: [
      {
        id: "01a22c28-0000-7000-8000-00000000007b",
        tool: {
          name: "wrench B",
          min: "5",
          max: "25",
          unit: "N·m",
          class_percent: "4",
          calibrated_on: "2026-03-01",
          certificate: "invented 7-114",
          calibration_due: "2027-03-01",
        },
      },
    ],
    tools_off: [],
    device: { id: "01a22c28-0000-7000-8000-0000000000de", name: "Bay 2" },
    seen: {},
    unsettled: [],
    ...setupIs,
  };
  const core = {
    opened: {
      troubles,
      setup,
      pins: pins.map((person) => ({ person, how: "own_first", on: "2026-03-02" })),
      window: JSON.stringify({ ...where, job: job?.job ?? null }),
      demo_clock: true,
    },
    jobs: line ? [line] : [],
    look: job,
    enter: { refused: null, pin_of: null, page: job },
    give_pin: { right: false, wait_s: 30 },
    set_pin: [],
    preview: { class: null, not_yet: false, said: [], other: null },
    record_page: record,
    figures,
    prove: { proved: false, doing: "at most one void: looking at states", states: 812345, failed: null },
    offers: [],
    plan: { page: null, none: "The job has ended; there is nothing left to plan.", searching: null },
    judge_tools: [{ problems: [], past: null, notes: [] }],
    sheets: { sheets: [], unfinished: [], checklists: [], unreadable: [] },
    backups: { plan: null, made: null, age: null, due: false, failed: null },
    troubles,
    ...answers,
  };
  const picture = () => {
    const canvas = document.createElement("canvas");
    canvas.width = 320;
    canvas.height = 240;
    const ink = canvas.getContext("2d");
    ink.fillStyle = "#777";
    ink.fillRect(0, 0, 320, 240);
    return new Promise((done) => canvas.toBlob(async (blob) => done(await blob.arrayBuffer()), "image/jpeg"));
  };
  window.__TAURI_INTERNALS__ = {
    invoke: async (name, takes) => {
      if (name === "thumbnail" || name === "photo") return picture();
      let answer = core[name] ?? null;
      // One answer for each value of what is asked with.
      if (answer?.by) answer = answer[takes[answer.by]];
      if (answer?.throws) throw answer.throws;
      // What goes on for longer than anybody looks.
      if (answer?.waits) return new Promise(() => {});
      return answer;
    },
  };
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
