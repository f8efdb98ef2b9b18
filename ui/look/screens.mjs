// The scenes of the screens beside the step sheet and of what is laid over it.
import { LUND, MARL, NOAK, ODE } from "./people.mjs";
import { settled, press as tap } from "./settled.mjs";

const offers = [
  {
    hash: "a1",
    id: "pan-and-solenoid",
    title: "Pan drop, filter inspection and shift solenoid",
    revision: 2,
    demo: true,
    steps: 57,
    proved: false,
    questions: [
      {
        condition: "key",
        name: "key",
        answers: [
          { value: "in_car", says: "in car" },
          { value: "secured", says: "secured" },
        ],
      },
    ],
    sheets: [
      {
        id: "demo-six-speed",
        title: "Demo: five-door wagon, transverse six-speed automatic, capped level tube",
        revision: 1,
        demo: true,
        proved: false,
        shop_lacks: [],
      },
    ],
  },
];
const wrong = { name: "wrench C", min: "25", max: "5", unit: "N·m", calibration_due: "2026-03-01" };
const before = {
  ...offers[0],
  hash: "b2",
  revision: 1,
  proved: true,
  sheets: offers[0].sheets.map((sheet) => ({ ...sheet, proved: true })),
};
const listed = (offer, more) => ({
  offer,
  built_in: false,
  adopted: false,
  proved: false,
  to_prove: [],
  needs: ["touch limit, bare metal", "pan bolt torque", "level chart"],
  seen: [],
  ...more,
});
const own = {
  ...offers[0],
  hash: "c3",
  id: "our-washer",
  title: "Drain plug resealed, the shop's way",
  steps: 2,
  questions: [],
};
const refuted = {
  kind: "refused",
  message:
    'The checklist "our-washer" is not proved, so no job can be started with it: A vehicle that is not on its locks can come down and crush whoever is under it. Come out at once. The shortest way there: begin step look "Look at the plug".',
  pin_of: null,
};
const checklists = {
  checklists: [
    listed(before, { built_in: true, proved: true }),
    listed(own, { to_prove: ["demo-six-speed"] }),
    listed({ ...own, hash: "d4", id: "our-pan", title: "Pan off and on", sheets: [] }),
  ],
  unreadable: [],
};
const line = (repair_order, label, ended, events, day = "2026-03-02") => ({
  started_ms: new Date(`${day}T08:10`).getTime(),
  changed_ms: new Date(`${day}T16:40`).getTime(),
  job: repair_order,
  repair_order,
  label,
  demo: true,
  ended,
  events,
});
const jobs = [
  line("RO 20311", "Demo van, level only", true, 41, "2026-02-24"),
  line("RO 20417", "Demo wagon, flare on 2-3", false, 163),
  line("RO 20422", "Demo wagon, filter and fluid", false, 12),
  line("RO 20398", "Demo coupe, no third", true, 353),
];
const locked = {
  throws: {
    kind: "locked",
    message: "Another window has the store /var/lib/panside open. Close that one and try again.",
  },
};
const typed = {
  checklist: null,
  sheet: null,
  repairOrder: "RO 20417",
  label: "Demo wagon, flare on 2-3",
  conditions: {},
  tried: null,
};
const larger = (what) => (page) =>
  page
    .getByRole("button", { name: new RegExp(`^Show larger: .*${what}`) })
    .first()
    .click();
const message = (text, id = "said") => ({ id, args: {}, text });
const turned = {
  problems: [
    { field: "min", message: message("The tool's range 25 N·m to 5 N·m cannot be. Correct the tool.") },
  ],
  past: message(
    "Its calibration ended on 2026-03-01; today is 2026-03-02. Nothing that is clicked with it counts.",
  ),
  notes: [],
};
const past = { ...turned, problems: [] };
const proving = (more) => ({ proved: false, doing: "", states: 0, failed: null, ...more });

/** Presses a button, also one that is closed: it says why. */
const press = (name) => (page) => tap(page, page.getByRole("button", { name }).first());
const inOverlay = (name) => (page) =>
  tap(
    page,
    page
      .getByRole("dialog")
      .getByRole("button", { name, exact: name === "ENTER" })
      .first(),
  );
const exactly = (name) => (page) => page.getByRole("button", { name, exact: true }).click();
const digits = (text) => (page) => page.keyboard.type(text);
/** What a record lacks: steps that are not done, and what is off the vehicle. */
const missing = (steps, off) => [
  {
    says: "Not done",
    what: Array.from({ length: steps }, (_, at) => ({
      says: `Step ${at + 1}: what is to be done there`,
      step: `step_${at}`,
    })),
  },
  {
    says: "Off the vehicle",
    what: Array.from({ length: off }, (_, at) => ({ says: `item ${at + 1}`, step: null })),
  },
];
const more = (page) => page.getByRole("button", { name: "More", exact: true }).click();

export const screens = [
  { name: "bay-jobs", where: { screen: "bay" }, answers: { jobs } },
  {
    name: "bay-nobody",
    where: { screen: "bay", actor: null },
    setup: { people: [] },
    answers: { jobs: [] },
  },
  {
    name: "bay-nobody-setup",
    where: { screen: "bay", actor: null },
    setup: { people: [] },
    taps: ["Add who works here"],
  },
  { name: "bay-locked", where: { screen: "bay" }, answers: { jobs: locked } },
  { name: "bay-no-job", where: { screen: "bay" }, answers: { jobs }, taps: [press("Photos")] },
  { name: "bay-who", where: { screen: "bay" }, answers: { jobs }, taps: ["Switch person"] },
  { name: "new-job", where: { screen: "new_job", newJob: typed }, answers: { offers } },
  {
    name: "new-job-shop-lacks",
    where: { screen: "new_job", newJob: typed },
    answers: {
      offers: [
        {
          ...offers[0],
          sheets: [{ ...offers[0].sheets[0], shop_lacks: ["fire watch time", "touch limit of bare metal"] }],
        },
      ],
    },
  },
  {
    name: "new-job-refused",
    where: { screen: "new_job" },
    answers: {
      offers,
      prove: proving({ proved: true }),
      start: { throws: { kind: "refused", message: "A job needs the number of its repair order." } },
    },
    taps: ["START"],
  },
  {
    name: "new-job-not-proved",
    where: { screen: "new_job", newJob: typed },
    answers: {
      offers: [...offers, before],
      prove: proving({ failed: { kind: "other", message: "The proof broke off: no memory was left." } }),
    },
    taps: [press("START")],
  },
  { name: "photos", page: "work cover_and_harness 2", where: { screen: "photos" } },
  {
    name: "photos-large",
    page: "work cover_and_harness 2",
    where: { screen: "photos" },
    taps: [/Photo of the drop/],
  },
  {
    name: "photos-pixels",
    page: "work cover_and_harness 2",
    where: { screen: "photos" },
    taps: [/Photo of the drop/, "Next", "Actual pixels"],
  },
  { name: "figures", page: "finish", where: { screen: "figures" } },
  { name: "figures-dark", page: "finish", where: { screen: "figures", dark: true } },
  {
    name: "figures-none",
    page: "start",
    where: { screen: "figures" },
    answers: { figures: { figures: [] } },
  },
  { name: "figures-level", page: "finish", where: { screen: "figures" }, taps: [larger("stick")] },
  ...["Joint", "Coil", "Fluid balance", "Stick", "Bolts"].map((what) => ({
    name: `figures-measured-${what.split(" ").at(-1).toLowerCase()}`,
    page: "finish",
    figures: "measured/figures",
    where: { screen: "figures" },
    taps: [larger(what)],
  })),
  { name: "figures-bolts", page: "finish", where: { screen: "figures" }, taps: [larger("pan")] },
  { name: "record", page: "finish", where: { screen: "record" }, taps: ["Save the record"] },
  {
    name: "record-saved",
    page: "finish",
    where: { screen: "record" },
    answers: { save_record: "/home/shop/.local/share/panside/bay/records/RO-20417-0196aa31-353.pdf" },
    taps: ["Save the record"],
  },
  {
    name: "record-missing",
    page: "begin coils_warm",
    where: { screen: "record" },
    record: { missing: missing(41, 2) },
    taps: [/^Not done/],
  },
  { name: "record-finish", page: "work hand_over", where: { screen: "record" }, taps: ["Finish the job"] },
  {
    name: "record-not-finished",
    page: "work cover_and_harness 2",
    where: { screen: "record" },
    taps: [press("Finish the job")],
  },
  { name: "setup", where: { screen: "setup" } },
  { name: "setup-left", where: { screen: "setup", leftHanded: true } },
  {
    name: "setup-removed",
    where: { screen: "setup" },
    setup: {
      left: [{ id: NOAK, name: "A. Noak", roles: ["technician"], lead: false }],
      tools_off: [{ id: NOAK, tool: { ...wrong, name: "wrench A, which is away for its calibration" } }],
    },
  },
  {
    name: "setup-unsettled",
    where: { screen: "setup" },
    setup: {
      device: { id: NOAK, name: null },
      unsettled: [
        `The person "R. Odell" was changed on two devices at once. K. Lund on Bay 2: name "R. Odell"; K. Lund on device ${NOAK}: name "Rut Ode". The first of these is in use: keep it as it should be.`,
      ],
    },
  },
  {
    name: "setup-checklists",
    where: { screen: "setup" },
    answers: { checklists },
    taps: ["More below"],
  },
  {
    name: "setup-checklist-proving",
    where: { screen: "setup" },
    answers: { checklists },
    taps: [/Open.*Drain plug/, exactly("PROVE"), settled],
  },
  {
    name: "setup-checklist-refuted",
    where: { screen: "setup" },
    answers: { checklists, prove: proving({ failed: refuted }) },
    taps: [/Open.*Drain plug/, exactly("PROVE"), settled],
  },
  {
    name: "setup-checklist-sheet-first",
    where: { screen: "setup" },
    answers: { checklists },
    taps: [/Open.*Pan off/],
  },
  { name: "setup-device", where: { screen: "setup" }, taps: [/Change.*This tablet/] },
  { name: "setup-person", where: { screen: "setup" }, taps: ["Add person"] },
  {
    name: "setup-tool",
    where: {
      screen: "setup",
      tool: {
        id: null,
        seen: [],
        tool: wrong,
      },
    },
    answers: { judge_tools: [turned] },
    taps: ["Add torque wrench", press("ADD")],
  },
  { name: "setup-pin", where: { screen: "setup" }, taps: ["Set a PIN", digits("471")] },
  {
    name: "setup-pin-differs",
    where: { screen: "setup" },
    taps: ["Set a PIN", digits("4711"), "Continue", digits("4712"), exactly("SET")],
  },
  {
    name: "setup-pin-asked",
    where: { screen: "setup", actor: { id: LUND, role: "service_writer" } },
    answers: {
      set_pin: { throws: { kind: "pin", message: "The PIN of K. Lund is needed for this.", pin_of: LUND } },
    },
    taps: [
      "Change the PIN",
      digits("4711"),
      "Continue",
      digits("4711"),
      exactly("SET"),
      settled,
      digits("2580"),
      exactly("ENTER PIN"),
      settled,
    ],
  },
  { name: "setup-pin-reset", where: { screen: "setup" }, pins: [ODE, MARL, LUND], taps: ["Reset the PIN"] },
  { name: "setup-pin-reset-nobody", where: { screen: "setup" }, pins: [MARL], taps: ["Reset the PIN"] },
  { name: "setup-person-change", where: { screen: "setup" }, taps: [/Change.*K. Lund/] },
  { name: "setup-tool-past", where: { screen: "setup" }, answers: { judge_tools: [past] } },
  {
    name: "setup-tool-change",
    where: { screen: "setup" },
    answers: { judge_tools: [past] },
    taps: [/Change.*wrench B/],
  },
  { name: "setup-size", where: { screen: "setup" }, taps: ["Set screen size", "Wider by 20"] },
  { name: "over-who", page: "work cover_and_harness 2", taps: ["R. Ode"] },
  { name: "over-more", page: "work cover_and_harness 2", taps: [more] },
  { name: "over-more-closed", page: "move walk_round 2", taps: [more, press("Stop and call")] },
  {
    name: "over-skip",
    page: "move set_on_locks",
    step: "look_round",
    // No step of the demo job may be skipped.
    change: (job) => {
      job.view.steps.find(({ id }) => id === "look_round").skip = null;
    },
    taps: [more, "Skip this step"],
  },
  {
    name: "over-void",
    page: "void coils_warm",
    step: "road_before",
    taps: [more, "Void this entry", "Typing mistake"],
  },
  { name: "over-stop", page: "work cover_and_harness 2", taps: [more, "Stop and call"] },
  { name: "over-observe", page: "work cover_and_harness 2", taps: [more, "Correct the vehicle status"] },
  {
    name: "over-observe-value",
    page: "work cover_and_harness 2",
    taps: [more, "Correct the vehicle status", inOverlay("exhaust pipe"), "tied", inOverlay("ENTER")],
  },
  { name: "over-renew", page: "move walk_round 2", taps: [more, "Signatures to renew"] },
];
