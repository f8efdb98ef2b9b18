// The scenes of what is said before a tap, offered where it is missed, and must be read whole with the longest words.
import { settled } from "./settled.mjs";
import { entry, key, says, type } from "./taps.mjs";

const entriesOf = (job) => job.view.steps.flatMap((step) => step.entries);
/** A step in somebody's hands with nothing missing, and this answer in it. */
const answered = (id, asked, value) => (job) => {
  const step = job.view.steps.find((one) => one.id === id);
  Object.assign(step, { shown: "in_progress", done: null, signs: [] });
  const found = step.entries.find((one) => one.id === asked);
  Object.assign(found, { value, class: Object.values(value)[0].class, said: [] });
};
/** The job ends, and the vehicle is safe to leave. */
const ending = (job) => {
  job.view.over = "ending";
  for (const step of job.view.steps)
    if (step.shown === "open" || step.shown === "in_progress") step.shown = "waiting";
};
/** The longest words that any value, name and limit of the shipped job has. */
const longest = (job) => {
  const long = (texts) => texts.reduce((one, other) => (other.length > one.length ? other : one), "");
  for (const condition of job.view.conditions) {
    condition.says = long(condition.values).replaceAll("_", " ");
  }
  const limits = entriesOf(job).flatMap((one) => one.limits);
  const limit = limits.reduce((one, other) => (other.text.length > one.text.length ? other : one));
  for (const one of entriesOf(job)) if ("reading" in one.ask) one.limits = [limit];
  const vin = entriesOf(job).find((one) => one.id === "vin");
  if (vin) Object.assign(vin, { value: { scan: { text: "WMWMWMWMWMWMWMWMW" } }, class: "read" });
};

export const steps = [
  { name: "pad-choice-ends", page: "start", taps: [entry("drive"), settled] },
  {
    name: "step-ends",
    page: "begin concern",
    step: "identify",
    change: answered("identify", "drive", { choice: { class: "high_voltage" } }),
  },
  { name: "step-to-stop", page: "begin concern", step: "concern", change: ending },
  { name: "step-helps", page: "work ready_to_lift", step: "pads" },
  { name: "step-nobody", page: "begin bay_ready", step: "bay_ready", setup: { people: [] } },
  { name: "step-lapsed", page: "move walk_round 2", step: "warm_up" },
  { name: "step-lapsed-row", page: "move walk_round 2", step: "bay_ready" },
  { name: "pad-codes", page: "begin save_codes", taps: [entry("codes"), settled] },
  {
    name: "pad-vin-perhaps",
    page: "begin identify",
    answers: {
      preview: {
        class: "read",
        not_yet: false,
        other: null,
        said: [
          {
            id: "vin-check-digit",
            args: {},
            text: "The check digit in position 9 is 1; the rest calls for X. Read it again.",
          },
          {
            id: "vin-perhaps",
            args: { vin: { text: "1M8GDM9AXKP042788" } },
            text: "Perhaps 1M8GDM9AXKP042788: position 9 is X.",
          },
        ],
      },
    },
    taps: [entry("vin"), type("1M8GDM9A1KP042788"), settled],
  },
  {
    name: "pad-reading-outside",
    page: "begin bay_ready",
    answers: says("11.2 V is below 12.4 V to 12.9 V (battery at rest). Charge it first.", {
      class: "outside",
    }),
    taps: [entry("rest"), key("1"), key("1"), key("decimal point"), key("2"), settled],
  },
  { name: "frame-back", page: "begin warm_up", taps: ["More", key("Figures"), key("Job")] },
  { name: "frame-longest", page: "begin warm_up", change: longest },
  { name: "rows-longest", page: "begin identify", step: "identify", change: longest },
];
