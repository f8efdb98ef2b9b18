// The job steps: where their knots lie, one a step, in a lane for the height where the work is; and their phases.
import type { PhaseView, Shown, StepView, Zone } from "../core/types";

/** The lanes, from the floor upwards. */
export const LANES = ["floor", "bench", "up"] as const;

/** A lane. */
export type Lane = (typeof LANES)[number];

/** The lane of a zone: at the vehicle on the floor, at the bench, or under the vehicle. */
export function laneOf(zone: Zone): Lane {
  if (zone === "under") return "up";
  return zone === "bench" ? "bench" : "floor";
}

/** Half the width of a lane's name: what the outer lanes keep from the edges. */
const EDGE = 21;

/** The middle of a lane in a line of `width` pixels. */
export function laneX(lane: Lane, width: number): number {
  return EDGE + ((width - 2 * EDGE) * LANES.indexOf(lane)) / (LANES.length - 1);
}

/** The steps that are in the job steps: those of this job that are not skipped. */
export function inJobSteps(steps: StepView[]): StepView[] {
  return steps.filter((step) => step.shown !== "not_in_this_job" && step.shown !== "skipped");
}

/** A knot. */
export interface Knot {
  id: string;
  number: number;
  shown: Shown;
  lane: Lane;
  /** Middle of the knot. */
  x: number;
  y: number;
  /** The height that is its own. */
  height: number;
  /** It is drawn as a block with its number: in progress, or looked at. */
  block: boolean;
  lookedAt: boolean;
}

/** Height that a block takes where there is room. */
const BLOCK = 30;

/** The least that a knot without a block gets before blocks shrink. */
const LEAST = 3;

/** Lays the knots between `top` and `bottom` so that each has a height of its own and none lies on another. */
export function knots(
  steps: StepView[],
  lookedAt: string | null,
  width: number,
  top: number,
  bottom: number,
): Knot[] {
  const shown = inJobSteps(steps);
  const isBlock = (step: StepView) => step.shown === "in_progress" || step.id === lookedAt;
  const blocks = shown.filter(isBlock).length;
  const small = shown.length - blocks;
  const height = Math.max(0, bottom - top);
  const room = blocks === 0 ? 0 : Math.max(0, height - small * LEAST) / blocks;
  const block = Math.min(BLOCK, Math.max(room, height / Math.max(1, shown.length)));
  const pitch = small === 0 ? 0 : Math.min(BLOCK, (height - blocks * block) / small);
  let y = top;
  return shown.map((step) => {
    const own = isBlock(step) ? block : pitch;
    y += own;
    const lane = laneOf(step.zone);
    return {
      id: step.id,
      number: step.number,
      shown: step.shown,
      lane,
      x: laneX(lane, width),
      y: y - own / 2,
      height: own,
      block: isBlock(step),
      lookedAt: step.id === lookedAt,
    };
  });
}

/** The forms of a knot. */
export type Form =
  | "bar"
  | "block"
  | "ring"
  | "small_ring"
  | "dot"
  | "broken_bar"
  | "cross"
  | "diamond"
  | "gap";

/** The form that tells a state. */
export function formOf(shown: Shown): Form {
  const forms: Record<Shown, Form> = {
    done: "bar",
    in_progress: "block",
    open: "ring",
    waiting: "small_ring",
    undecided: "dot",
    lapsed: "broken_bar",
    voided: "cross",
    missed: "diamond",
    skipped: "gap",
    not_in_this_job: "gap",
  };
  return forms[shown];
}

/** Whether the work of a step is behind: the line is drawn thick up to there. */
export function isBehind(shown: Shown): boolean {
  return shown === "done" || shown === "lapsed" || shown === "voided";
}

/** The steps of a phase, one after the other. */
export interface Phase {
  at: number;
  view: PhaseView;
  steps: StepView[];
  /** No step of it is left to do or to put right. */
  done: boolean;
}

/** Whether nothing is left to do at a step. */
function isOver(shown: Shown): boolean {
  return shown === "done" || shown === "skipped" || shown === "not_in_this_job";
}

/** Steps by phase, in the order of the steps; phases without any of them are left out. */
export function byPhase(phases: PhaseView[], steps: StepView[]): Phase[] {
  return phases.flatMap((view, at) => {
    const own = steps.filter((step) => step.phase === at);
    return own.length > 0 ? [{ at, view, steps: own, done: own.every((step) => isOver(step.shown)) }] : [];
  });
}

/** Whether a phase is one row: it is done, and unless somebody has turned it, it holds no step that is looked at. */
export function isFolded(
  phase: Phase,
  lookedAt: string | null,
  turned: ReadonlyMap<number, boolean>,
): boolean {
  if (!phase.done) return false;
  return turned.get(phase.at) ?? !phase.steps.some((step) => step.id === lookedAt);
}
