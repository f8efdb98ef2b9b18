// For tests: what the checklists of this repository ask of the frame's drawings, read from the files themselves.

/** As much of a checklist as the frame's drawings depend on. */
interface Checklist {
  conditions: { id: string; values: string[]; draws?: string }[];
  items: { name: string }[];
  phases: { steps: { zone: string }[] }[];
}

const files = import.meta.glob<string>("../../../checklists/*.checklist.json", {
  query: "?raw",
  import: "default",
  eager: true,
});

/** Every checklist there is. */
export const checklists = Object.values(files).map((text) => JSON.parse(text) as Checklist);
