import { readdirSync, readFileSync } from "node:fs";
import { backups } from "./backups.mjs";
import { hands } from "./hands.mjs";
import { screens } from "./screens.mjs";
import { settled } from "./settled.mjs";
import { sheets } from "./sheets.mjs";
import { steps } from "./steps.mjs";
import { entry, inDialog, key, says, type } from "./taps.mjs";
import { turnedUpScenes } from "./turnedUp.mjs";

// The scenes to look at. `page` is a line of the demo walk, by what is done there (`walk.mjs`); `where` is where the window was left; `taps` are
// names of buttons to press, or functions of the page; `keysOff` says that it lets no key through.
// The dangers with the longest texts that are shipped.
const checklists = new URL("../../checklists/", import.meta.url);
const dangers = ["", "parts/"]
  .flatMap((folder) => readdirSync(new URL(folder, checklists)).map((file) => folder + file))
  .filter((file) => file.endsWith(".json"))
  .flatMap((file) => JSON.parse(readFileSync(new URL(file, checklists), "utf8")).dangers ?? [])
  .filter((one, at, all) => all.findIndex((other) => other.id === one.id) === at)
  .sort((one, other) => other.text.length - one.text.length);
const endanger = (count) => (job) => {
  job.view.dangers = dangers.slice(0, count).map(({ id, signal, text }) => ({ id, signal, text }));
};

const doing = (does, id, title, from_min, until_min) => ({ person: 1, does, id, title, from_min, until_min });
/** The same, done by somebody else. */
const by = (person, done) => ({ ...done, person });
const alone = {
  none: null,
  searching: 7,
  page: {
    seq: 0,
    plan_only: false,
    doings: [
      doing("work", "cover_and_harness", "Cover and harness", 0, 12),
      doing("walk", null, "the bench", 12, 13),
      doing("start", "drain_fluid", "Drain the fluid", 13, 18),
      doing("vehicle_action", "stop_engine", "Stop the engine", 18, 19),
      doing("work", "pan_off", "Pan down", 28, 40),
    ],
    waits: [
      {
        step: "drain_fluid",
        what: "the fluid to drain",
        from_min: 18,
        until_min: 28,
        attended: false,
        idle_min: 9,
      },
      {
        step: "fire_watch",
        what: "the end of the fire watch",
        from_min: 30,
        until_min: 90,
        attended: true,
        idle_min: 0,
      },
    ],
    total_min: 511,
    bound_min: 500,
    exact: false,
    meanwhile: {
      running: [{ step: "probe_exhaust", what: "the exhaust to cool", left_min: 32 }],
      can: [
        { step: "cover_and_harness", minutes: 12, extra_min: 0, exact: true },
        { step: "look_round", minutes: 5, extra_min: 4, exact: false },
        { step: "pads", minutes: 5, extra_min: null, exact: false },
      ],
    },
  },
};

/** Answers for one person and for two, as the core does. */
const plan = {
  by: "people",
  1: alone,
  2: {
    none: null,
    searching: 42,
    page: {
      ...alone.page,
      plan_only: true,
      total_min: 444,
      bound_min: 438,
      doings: [
        doing("work", "cover_and_harness", "Cover and harness", 0, 12),
        by(2, doing("vehicle_action", "stop_engine", "Stop the engine", 0, 1)),
        by(2, doing("start", "drain_fluid", "Drain the fluid", 1, 6)),
        doing("work", "open_filter", "Open the filter", 12, 24),
        by(2, doing("work", "pan_off", "Pan down", 16, 28)),
      ],
      waits: [
        {
          step: "drain_fluid",
          what: "the fluid to drain",
          from_min: 6,
          until_min: 16,
          attended: false,
          idle_min: 0,
        },
      ],
      meanwhile: { running: [], can: [] },
    },
  },
};

/** What a damaged store says of itself. */
const damaged = {
  said: [
    "The newest entries are lost: the journal ends at entry 113, but entry 354 was confirmed. Restore a backup, or go on from here in a new epoch.",
    "Photo 2f6b9c0d of job 082ac683 is missing on disk.",
  ],
  go_on: true,
  troubled: true,
};

export const scenes = [
  ...turnedUpScenes,
  ...steps,
  ...screens,
  ...sheets,
  ...backups,
  ...hands,
  { name: "bay-empty", where: { screen: "bay" } },
  { name: "bay-damaged", where: { screen: "bay" }, troubles: damaged },
  { name: "step-damaged", page: "start", troubles: damaged },
  { name: "step-open", page: "start" },
  { name: "rows-open", page: "begin coils_warm" },
  { name: "rows-not-yet", page: "work solenoid_in" },
  { name: "rows-level", page: "work read_level" },
  { name: "rows-timer", page: "begin relearn" },
  { name: "rows-meanwhile", page: "refused begin try_joint", answers: { plan } },
  {
    name: "plan-order",
    page: "begin coils_warm",
    where: { planOrder: true, overlay: "job_steps" },
    answers: { plan },
  },
  {
    name: "plan-two",
    page: "begin coils_warm",
    where: { planOrder: true, overlay: "job_steps" },
    answers: { plan },
    taps: ["Two people"],
  },
  { name: "plan-none", page: "begin coils_warm", where: { planOrder: true, overlay: "job_steps" } },
  { name: "rows-typed", page: "begin bay_ready", taps: [entry("rest"), type("12,6"), "Back"] },
  {
    name: "pad-reading",
    page: "begin warm_up",
    answers: says("36,5 °C; needs 40 °C to 70 °C (level temperature).", {
      not_yet: true,
      other: { value: "97.7", unit: "°F" },
    }),
    taps: [entry("fluid"), key("3"), key("6"), key("decimal point"), key("5"), settled],
  },
  {
    name: "pad-reading-letters",
    page: "begin warm_up",
    answers: says('"36x": "x" is no part of a number.', { class: null }),
    taps: [entry("fluid"), type("36x"), settled],
  },
  {
    name: "pad-level",
    page: "begin read_level",
    answers: says("No reading yet. Read the stick twice.", { class: null }),
    taps: [entry("stick"), settled],
  },
  {
    name: "pad-level-dry",
    page: "begin read_level",
    answers: says(
      "The stick stayed dry. Look at its seating, the temperature and the idle, then read again.",
      {
        not_yet: true,
      },
    ),
    taps: [entry("stick"), type("58"), (page) => page.getByLabel("1 · stick").focus(), "no trace", settled],
  },
  {
    name: "pad-level-low",
    page: "work correct_level",
    answers: says(
      "4 mm below the low mark; the band is 21 mm to 31 mm at 58 °C. Add 0.48 L, then read again.",
      {
        class: "below",
        not_yet: true,
      },
    ),
    taps: [entry("stick"), settled],
  },
  {
    name: "pad-coils",
    page: "begin coils_warm",
    answers: says("5.15 Ω at 20 °C: within 5 Ω to 5.6 Ω (shift 1).", { class: "inside" }),
    taps: [
      entry("coils"),
      key("6"),
      key("2"),
      (page) => page.getByLabel("shift 1").focus(),
      key("6"),
      settled,
    ],
  },
  {
    name: "pad-coils-open",
    page: "begin coils_warm",
    answers: says("OL at 20 °C: open."),
    taps: [
      entry("coils"),
      (page) => page.getByLabel("third gear").focus(),
      (page) => page.locator(".keypad .extra").click(),
      settled,
    ],
  },
  {
    name: "pad-cool-down",
    page: "begin probe_exhaust",
    answers: says(
      "63 °C is hot; needs at most 48 °C (touch limit bare metal). Not before 12:32, in 34 minutes.",
      {
        class: "hot",
        not_yet: true,
        other: { value: "145.4", unit: "°F" },
      },
    ),
    taps: [entry("shell"), key("6"), key("3"), settled],
  },
  {
    name: "pad-cool-down-infrared",
    page: "begin probe_exhaust",
    answers: says("This is no evidence that it is cool. Use a contact probe, or coat a spot.", {
      class: null,
    }),
    taps: [entry("joint"), key("3"), (page) => page.getByRole("switch").click(), "coated, dull", settled],
  },
  {
    name: "pad-balance",
    page: "begin leak_check",
    answers: says("0.3 L more went in than came out. Say where the fluid is, and who says so.", {
      class: "differs",
      not_yet: true,
    }),
    taps: [entry("balance"), key("2"), settled],
  },
  {
    name: "pad-balance-explain",
    page: "begin leak_check",
    answers: says("0.3 L more went in than came out.", { class: "differs", not_yet: true }),
    taps: [entry("balance"), key("2"), settled, "Say where the fluid is", "in the new filter"],
  },
  {
    name: "pad-count",
    page: "begin pipe_up",
    answers: says("Short: exhaust flange nuts 2/3. Find them, or say where they are and who says so.", {
      class: "short",
      not_yet: true,
    }),
    taps: [entry("back"), "exhaust flange nuts all 3", "one less: exhaust flange nuts", settled],
  },
  {
    name: "pad-count-account",
    page: "begin drain_fluid",
    answers: says("Short.", { class: "short", not_yet: true }),
    taps: [entry("washer"), "one less", settled, "Say where the missing", "lost"],
  },
  {
    name: "pad-torque",
    page: "begin pan_torque",
    answers: says("All 2 stages clicked within tolerance."),
    taps: [entry("pan"), settled, "wrench B", "All 16 clicked at 4", "All 16 clicked at 9", settled],
  },
  {
    name: "pad-torque-bolts",
    page: "begin pan_torque",
    answers: says("Stage 1 has no setting.", { class: null }),
    taps: [
      entry("pan"),
      settled,
      "wrench B",
      "Bolt by bolt",
      "Bolt 1 of 16",
      "Bolt 2 of 16",
      "Bolt 3 of 16",
      settled,
    ],
  },
  {
    name: "pad-torque-typed",
    page: "begin pan_torque",
    answers: says("All 2 stages clicked within tolerance."),
    taps: [
      entry("pan"),
      settled,
      "wrench B",
      "Type it, crowfoot, override",
      "clicked at 4",
      "clicked at 9",
      settled,
    ],
  },
  {
    name: "pad-torque-adapter",
    page: "begin pan_torque",
    taps: [
      entry("pan"),
      settled,
      "wrench B",
      "Type it, crowfoot, override",
      (page) => page.getByRole("switch").click(),
    ],
  },
  { name: "pad-torque-tool", page: "begin pan_torque", taps: [entry("pan"), settled, "Another wrench"] },
  { name: "pad-torque-first", page: "begin pan_torque", taps: [entry("pan"), settled] },
  {
    name: "pad-torque-unusable",
    page: "begin pan_torque",
    answers: says("9 N·m is outside the range of wrench B, 10 N·m to 60 N·m.", {
      class: "outside",
      not_yet: true,
    }),
    taps: [entry("pan"), settled],
  },
  { name: "pad-torque-map", page: "begin pan_torque", taps: [entry("pan"), settled, "Back"] },
  { name: "pad-photo", page: "begin pan_debris", taps: [entry("photo_pan")] },
  {
    name: "pad-photo-wrong",
    page: "begin pan_debris",
    answers: {
      add_photo: { throws: { kind: "photo", message: "This file is no picture. Take the photo again." } },
    },
    taps: [
      entry("photo_pan"),
      (page) =>
        page
          .locator("input[type=file]")
          .setInputFiles({ name: "list.txt", mimeType: "text/plain", buffer: Buffer.from("no picture") }),
      settled,
    ],
  },
  { name: "pad-photo-taken", page: "work cover_and_harness", taps: [entry("photo_routing"), settled] },
  { name: "pad-choice", page: "begin open_filter", taps: [entry("found")] },
  {
    name: "pad-estimate",
    page: "begin ask_repair",
    answers: says("48.90 USD before tax: parts 48.90 USD, labor 0.00 USD for 0 h.", { class: "estimated" }),
    taps: [
      entry("estimate"),
      "+ part",
      "filter",
      key("4"),
      key("8"),
      "+ labor",
      "diagnosis",
      "+ may turn up",
      settled,
    ],
  },
  {
    name: "pad-estimate-ambiguous",
    page: "begin ask_repair",
    answers: says('Filter: "1,250" can be 1250 or 1.25. Type it as one of these.', { class: null }),
    taps: [entry("estimate"), "+ part", "filter", type("1,250"), settled],
  },
  {
    name: "pad-authorization",
    page: "begin ask_repair",
    change: (job) => {
      const step = job.view.steps.find(({ id }) => id === "ask_repair");
      const amount = (value) => ({ value, unit: "USD" });
      step.entries.find(({ id }) => id === "answer").estimate = {
        sum: amount("640.00"),
        limit: amount("760.00"),
      };
    },
    answers: says(
      "500 USD is less than the estimate of 640.00 USD. Enter the full amount that was agreed to, or make the estimate smaller.",
      { class: "below", not_yet: true },
    ),
    taps: [entry("answer"), "go ahead", "by phone", "owner", settled],
  },
  {
    name: "pad-several",
    page: "begin pan_debris",
    answers: says("Found: fine gray paste, flakes.", { class: "flakes" }),
    taps: [entry("found"), "fine gray paste", "flakes", settled],
  },
  { name: "pad-decision", page: "begin judge", taps: [entry("verdict")] },
  {
    name: "pad-decision-against",
    page: "begin judge",
    taps: [entry("verdict"), "Go against it …", "the reading is doubtful"],
  },
  {
    name: "pad-choice-refused",
    page: "begin concern",
    answers: { enter: { throws: { kind: "store", message: "The disk is full. Nothing was written." } } },
    taps: [entry("where"), "2-3 shift", settled],
  },
  {
    name: "pad-scan",
    page: "begin identify",
    answers: says("A VIN has 17 characters, 4 were typed.", { class: null }),
    taps: [entry("vin"), type("dem0"), settled],
  },
  {
    name: "pad-timer",
    page: "refused work fire_watch",
    answers: says("Not yet: 25 of 60 minutes are left.", { class: null }),
    taps: [entry("time"), settled],
  },
  {
    name: "pad-note",
    page: "begin concern",
    answers: says("Note written."),
    taps: [entry("more"), "every drive", "only uphill", settled],
  },
  { name: "frame-floor", page: "begin warm_up" },
  { name: "frame-danger", page: "observe key" },
  { name: "frame-danger-long", page: "observe key", change: endanger(1) },
  { name: "frame-dangers-long", page: "observe key", change: endanger(2) },
  { name: "frame-dangers-many", page: "observe key", change: endanger(4) },
  { name: "frame-dangers-read", page: "observe key", change: endanger(4), taps: [/Opens vehicle actions/] },
  { name: "frame-watch", page: "refused work fire_watch" },
  { name: "frame-pan-off", page: "refused begin pan_up" },
  { name: "frame-dark", page: "work cover_and_harness 2", where: { dark: true } },
  { name: "frame-vehicle-actions", page: "work ready_to_lift", taps: ["Opens vehicle actions"] },
  {
    name: "frame-vehicle-action-done",
    page: "work ready_to_lift",
    taps: ["Opens vehicle actions", inDialog(/^Raise/)],
  },
  {
    name: "frame-vehicle-action-closed",
    page: "refused finish",
    // What can't be done now stays pressable; the driver would wait until it isn't closed any more.
    taps: ["Opens vehicle actions", inDialog(/^Raise/)],
  },
  {
    name: "pad-left",
    page: "begin warm_up",
    where: { leftHanded: true },
    taps: [entry("fluid"), key("3"), settled],
  },
  { name: "frame-job-steps", page: "refused begin pipe_up 2", taps: ["Opens all steps"] },
  {
    name: "frame-job-steps-opened",
    page: "refused begin pipe_up 2",
    taps: ["Opens all steps", /^Filter inspection and verdict/],
  },
  { name: "frame-left", page: "begin warm_up", where: { leftHanded: true } },
  {
    name: "frame-job-steps-open",
    page: "correct coils_warm",
    taps: ["Opens all steps", (page) => page.getByRole("switch", { name: "Open steps only" }).click()],
  },
  { name: "frame-tray", page: "begin old_seals", taps: ["Opens the tray"] },
  { name: "frame-wipe", page: "work cover_and_harness 2", taps: ["Turns touch off"], keysOff: true },
];
