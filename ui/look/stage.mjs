// A scene on its stage: the built page in Chromium over a core that is played from JSON pages, led by a finger that takes
// its time.
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { LUND, MARL, ODE } from "./people.mjs";
import { drawn, settled } from "./settled.mjs";
import { pageAt } from "./walk.mjs";

const dist = fileURLToPath(new URL("../dist", import.meta.url));
/** What axe-core is fetched as by a page that is looked at. */
export const AXE = "/axe.min.js";
const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
const types = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
};

/** The browser and the built page, with how to end both. */
export async function openStage() {
  const server = createServer((request, response) => {
    const path = new URL(request.url, "http://x").pathname;
    if (path === "/favicon.ico") return response.writeHead(204).end();
    try {
      const body = readFileSync(path === AXE ? axe : join(dist, path === "/" ? "index.html" : path));
      const type = types[extname(path)] ?? "text/html";
      // A script that is kept is not compiled again.
      response.writeHead(200, { "content-type": type, "cache-control": "max-age=3600" }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  }).listen(0);
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
  const end = async () => {
    await browser.close();
    server.close();
  };
  return { browser, address: `http://localhost:${server.address().port}/`, end };
}

/** A page on which a scene can be played, of this size; `pages` is the folder of what the core answers. */
export async function pageOf(scene, { browser, pages, width, height, mm }) {
  const page = await browser.newPage({ viewport: { width, height } });
  await prepare(scene, { page, pages, mm });
  return page;
}

/** Makes a page ready for a scene, and answers what takes that away again, so that the page can have another one. */
export async function prepare(scene, { page, pages, mm }) {
  const read = (name) => JSON.parse(readFileSync(join(pages, `${name}.json`), "utf8"));
  const job = scene.page === undefined ? null : read(pageAt(scene.page));
  scene.change?.(job);
  const time = await page.addInitScript(takeTime);
  const core = await page.addInitScript(playCore, {
    job,
    record: { ...read("record"), ...scene.record },
    figures: read(scene.figures ?? "figures"),
    where: {
      screen: "job",
      steps: job && scene.step ? { [job.job]: scene.step } : {},
      actor: { id: ODE, role: "technician" },
      dark: false,
      // There is nothing here to sound with.
      sound: false,
      mm,
      ...scene.where,
    },
    answers: scene.answers ?? {},
    pins: scene.pins ?? [LUND],
    setup: scene.setup ?? {},
    troubles: scene.troubles ?? { said: [], go_on: false, troubled: false },
    people: [ODE, MARL, LUND],
  });
  return async () => {
    await time.dispose();
    await core.dispose();
  };
}

/** Plays a scene from its start to where it is looked at. */
export async function play(scene, page, address) {
  await page.goto(address);
  await page.waitForSelector("[data-ready]");
  for (const step of scene.taps ?? []) {
    if (typeof step === "function") await step(page);
    else {
      const button = page.getByRole("button", { name: step }).first();
      await button.scrollIntoViewIfNeeded();
      await drawn(page);
      await button.click({ timeout: 10_000 });
    }
    await drawn(page);
  }
  await settled(page);
}

/** Runs in the page: its clock is led, so that nobody has to wait for the pauses that a person makes between taps. */
function takeTime() {
  const now = performance.now.bind(performance);
  let ahead = 0;
  let held = null;
  performance.now = () => held ?? now() + ahead;
  const clock = {
    /** The next tap stops the clock. */
    stops: false,
    /** The stopped clock goes on by so much. */
    set(ms) {
      held += ms;
    },
    goOn() {
      if (held !== null) ahead = held - now();
      held = null;
    },
  };
  window.__clock = clock;
  // What a person looks at before it is pressed; keys that type come fast.
  const isPress = (key) => ["Enter", "Escape", "F6", "F7"].includes(key);
  const pause = () => {
    if (held !== null) return;
    ahead += 600;
    if (clock.stops) held = now() + ahead;
  };
  // After the page has seen what stands under the finger, and before it clicks.
  addEventListener("pointerup", pause, true);
  addEventListener("keydown", (event) => isPress(event.key) && pause(), true);
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
    started_ms: 1772434800000,
    changed_ms: 1772463600000,
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
    shop_values: [],
    sheets: { sheets: [], unfinished: [], checklists: [], unreadable: [] },
    checklists: { checklists: [], unreadable: [] },
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
  window.__called = [];
  window.__TAURI_INTERNALS__ = {
    invoke: async (name, takes) => {
      window.__called.push(name);
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
