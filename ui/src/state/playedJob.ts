// For tests: a job as the core tells it, with two steps and nobody in them.

import { asked, core, opens } from "../core/played";
import type { JobPage, Person, Refusal, Reply } from "../core/types";

export const ode = { id: "o", role: "technician" as const };
export const marl = { id: "m", role: "second_person" as const };
export const people: Person[] = [
  { id: "m", name: "T. Marl", roles: ["second_person"], lead: false },
  { id: "o", name: "R. Ode", roles: ["technician"], lead: false },
];
export const refusal: Refusal = { message: { id: "refused-needs", args: {}, text: "Not now." }, unmet: [] };

/** The job after `seq` events, with these drafts. */
export function page(seq: number, drafts: Record<string, string> = {}): JobPage {
  const steps = ["identify", "concern"].map((id, at) => ({
    id,
    number: at + 1,
    shown: "open",
    entries: [],
    begin: null,
    signs: [],
  }));
  return {
    job: "j1",
    head: { seq, hash: `h${seq}` },
    utc_offset_min: 0,
    drafts,
    view: { steps },
  } as unknown as JobPage;
}

/** What the core answers to a command. */
export function reply(seq: number, refused: Refusal | null = null, pin_of: string | null = null): Reply {
  return { refused, pin_of, page: page(seq) };
}

/** Opens the window where that job is open and nothing has gone wrong; what was asked is forgotten. */
export async function openPlayed(): Promise<void> {
  const { openWindow } = await import("./opening");
  const { troubles } = await import("./troubles.svelte");
  opens(people);
  core.jobs = [{ job: "j1", ended: false }];
  core.look = page(1);
  troubles.last = null;
  troubles.refused = null;
  await openWindow();
  asked.length = 0;
}
