// For tests: a core that is played. What each command answers is put into `core`; what was asked stands in `asked`.
import { vi } from "vitest";
import type { Person, Setup, Tool } from "./types";

/** What each command answers; a function is called with what it takes, an error is told as a trouble of the store. */
export const core: Record<string, unknown> = {};

/** Every command that was asked for with what it takes, oldest first. */
export const asked: [string, Record<string, unknown>][] = [];

/** Takes the place of `./call`: `vi.mock(".../core/call", async (original) => (await import(".../core/played")).played(original))`. */
export async function played(original: () => Promise<unknown>): Promise<object> {
  vi.stubGlobal("window", { matchMedia: () => ({ matches: false }) });
  return {
    ...((await original()) as typeof import("./call")),
    call: async (name: string, takes: Record<string, unknown>) => {
      asked.push([name, takes]);
      const answer = core[name];
      if (answer instanceof Error) throw { kind: "store", message: answer.message, pin_of: null };
      return typeof answer === "function" ? answer(takes) : (answer ?? null);
    },
    addPhoto: async () =>
      typeof core.add_photo === "function"
        ? core.add_photo()
        : { photo: { hash: "ab", width: 4, height: 3 } },
  };
}

/** A setup with these people and tools; of each tool one event was seen. */
export function setupOf(people: Person[], tools: Tool[]): Setup {
  const listed = tools.map((tool, at) => ({ id: `t${at + 1}`, tool }));
  const seen = Object.fromEntries(listed.map(({ id }) => [id, ["h"]]));
  const device = { id: "d1", name: null };
  return { people, left: [], tools: listed, tools_off: [], device, seen, unsettled: [] };
}

/** Forgets all that was answered and asked: a window that is opened finds a store with these people and tools. */
export function opens(people: Person[], tools: Tool[] = []): void {
  for (const name of Object.keys(core)) delete core[name];
  core.opened = { troubles: [], setup: setupOf(people, tools), pins: [], window: null, demo_clock: false };
  core.jobs = [];
  asked.length = 0;
}

/** What a command was asked with each time, oldest first. */
export function askedFor(command: string): Record<string, unknown>[] {
  return asked.filter(([name]) => name === command).map(([, takes]) => takes);
}
