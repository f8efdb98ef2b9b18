// The scenes of what turns up outside of the checklist.
import { ODE } from "./people.mjs";
import { settled } from "./settled.mjs";

const page = "work cover_and_harness 2";
const more = (page) => page.getByRole("button", { name: "More", exact: true }).click();
const by = (seq) => ({ seq, stamp: { wall_ms: 0, boot: "look", mono_ms: seq }, who: ODE, name: "R. Ode" });
const lines = { currency: "USD", parts: [], labor: [], may_turn_up: [] };
const base = { taken_back: null };

/** A job in which something was found, the customer is asked, and a bracket is off. */
function turnedUp(job) {
  job.view.turned_up = {
    found: [
      {
        ...base,
        seq: 301,
        text: "cooler line rusted at the clamp",
        at: "left of the pan",
        urgency: "soon",
        photos: [],
        by: by(301),
        dealt_with: null,
        is_asked: false,
      },
    ],
    asked: [
      {
        ...base,
        seq: 302,
        step: "pipe_off",
        text: "flange nuts had to be split",
        lines: { ...lines, labor: [{ what: "split and replace", hours: "0.5", rate: "102" }] },
        estimate: { sum: { value: "51.00", unit: "USD" }, limit: null },
        standing: "open",
        holds_up: true,
        said: [],
        answer: null,
        by: by(302),
        went_on: null,
      },
    ],
    pieces: [
      {
        ...base,
        seq: 303,
        name: "line bracket",
        count: 2,
        off: 2,
        at: "at the bell housing",
        photos: [],
        by: by(303),
      },
    ],
    asks_at: "drain_fluid",
    currencies: ["USD", "CAD"],
  };
}

export const turnedUpScenes = [
  { name: "turned-found", page, taps: [more, "Take down what was found", settled] },
  { name: "turned-ask", page, taps: [more, "Ask the customer again", settled] },
  { name: "turned-piece", page, taps: [more, "One more piece off", settled] },
  { name: "turned-all", page, change: turnedUp, taps: [more, "All that turned up", settled] },
  { name: "turned-open", page, change: turnedUp },
];
