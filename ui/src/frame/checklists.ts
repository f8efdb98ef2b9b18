// For tests: what the checklists of this repository and the parts they share ask of the frame's drawings, read from the
// files themselves. A drawing depends on one condition, item or step at a time, so that nothing need be joined.

/** As much of a checklist or a part as the frame's drawings depend on. */
interface Checklist {
  conditions?: { id: string; values: { id: string }[]; draws?: string }[];
  items?: { name: string; draws?: string }[];
}

const files = import.meta.glob<string>(
  ["../../../checklists/*.checklist.json", "../../../checklists/parts/*.part.json"],
  { query: "?raw", import: "default", eager: true },
);

const read = Object.values(files).map((text) => JSON.parse(text) as Checklist);

/** Every condition there is. */
export const conditions = read.flatMap((checklist) => checklist.conditions ?? []);

/** Every kind of item there is. */
export const items = read.flatMap((checklist) => checklist.items ?? []);
