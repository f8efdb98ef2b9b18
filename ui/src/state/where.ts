// Where the window is: what is kept between starts, so that it comes back where it was.
import type { Actor, JobId, TypedShopValue, TypedTool } from "../core/types";

/** The screens. */
export type Screen = "bay" | "new_job" | "job" | "photos" | "figures" | "record" | "setup" | "sheet";

/** What can be laid over the step sheet. */
export type Overlay =
  | "vehicle_actions"
  | "job_steps"
  | "tray"
  | "who"
  | "more"
  | "renew"
  | "void"
  | "skip"
  | "explain_missed"
  | "observe"
  | "turned_up"
  | "stop"
  | "finish";

/** A new job as far as it is filled in. What is left out has the first of its answers. */
export interface NewJob {
  checklist: string | null;
  sheet: string | null;
  repairOrder: string;
  label: string;
  /** How the vehicle comes in, by condition. */
  conditions: Record<string, string>;
  /** The id of the try to start it, and what was tried: the same job tried again can't be started twice. */
  tried: { what: string; request: string } | null;
}

/** The entry whose pad is open. */
export interface Pad {
  step: string;
  entry: string;
}

/** The spec sheet that is looked at. */
export interface SheetAt {
  /** Its id, or the name of its draft. */
  id: string;
  /** It is being typed. */
  typing: boolean;
  /** The key whose value is open; the title has none. */
  value: string | null;
  /** Keys that a second person has compared so far; null while nobody does. */
  compared: string[] | null;
}

/** What a key of a remote does: go to the next thing, press what has the focus, go back. */
export const REMOTE_ACTIONS = ["next", "do", "back"] as const;
export type RemoteAction = (typeof REMOTE_ACTIONS)[number];

/** The key chosen for each, by the name that the browser gives it; null: none. */
export type RemoteKeys = Record<RemoteAction, string | null>;

/** No key is chosen. */
export const NO_REMOTE: RemoteKeys = { next: null, do: null, back: null };

/** What is kept between starts. */
export interface Where {
  screen: Screen;
  job: JobId | null;
  /** Step that is looked at, by job. */
  steps: Record<JobId, string>;
  actor: Actor | null;
  dark: boolean;
  /** CSS pixels of a millimeter of the screen. */
  mm: number;
  /** What is pressed most stands at the left hand. */
  leftHanded: boolean;
  newJob: NewJob | null;
  /** The large job steps are in the order of the plan. */
  planOrder: boolean;
  /** How many people are planned for; null: as many as the checklist has. */
  planPeople: number | null;
  overlay: Overlay | null;
  pad: Pad | null;
  sheet: SheetAt | null;
  /** A torque tool that is typed and not kept yet. */
  tool: TypedTool | null;
  /** A value of the shop that is typed and not kept yet. */
  shopValue: TypedShopValue | null;
  remote: RemoteKeys;
  /** What has become ready or was refused is heard and felt. */
  sound: boolean;
}

/** CSS pixels of a millimeter at 160 an inch: assumed until the screen is measured. */
export const ASSUMED_MM = 160 / 25.4;

/** Where the window was, as far as it was kept; nothing where there is no such text. */
export function readWhere(text: string | null): Partial<Where> | null {
  if (text === null) return null;
  try {
    return JSON.parse(text) as Partial<Where>;
  } catch {
    // What can't be read is forgotten: it says only which screen was open.
    return null;
  }
}
