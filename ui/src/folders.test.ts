// Which folder may import from which. The table is the whole of it: what is not in it is a broken edge, and an edge that
// nobody needs any more is taken out of it.
import { expect, test } from "vitest";

/** By folder: where it may import from, beside itself. The app at the root may import from all, and nobody from it. */
const MAY: Record<string, string[]> = {
  core: [],
  words: [],
  state: ["core"],
  keyboard: ["core", "state", "words"],
  parts: ["core", "keyboard", "state", "words"],
  figures: ["core", "parts"],
  guard: ["core"],
  plan: ["core", "parts", "state", "words"],
  frame: ["core", "parts", "plan", "state", "words"],
  entries: ["core", "figures", "keyboard", "parts", "state", "words"],
  "step-sheet": ["core", "entries", "parts", "plan", "state", "words"],
  overlays: ["core", "parts", "state", "words"],
  "turned-up": ["core", "entries", "parts", "state", "words"],
  "screens/parts": ["parts", "state", "words"],
  "screens/backups": ["core", "parts", "state", "words"],
  "screens/bay": ["core", "overlays", "parts", "screens/backups", "screens/parts", "state", "words"],
  "screens/figures": ["core", "figures", "parts", "screens/parts", "state", "words"],
  "screens/setup": [
    "core",
    "keyboard",
    "parts",
    "screens/backups",
    "screens/new-job",
    "screens/parts",
    "screens/spec-sheets",
    "state",
    "words",
  ],
  "screens/new-job": ["core", "screens/parts", "state", "words"],
  "screens/photos": ["core", "parts", "screens/parts", "state", "words"],
  "screens/record": ["core", "overlays", "parts", "screens/parts", "state", "words"],
  "screens/spec-sheets": ["core", "figures", "parts", "screens/parts", "state", "words"],
};

/** Packages that one folder alone may import. */
const ONLY: Record<string, string> = { "@tauri-apps/api/core": "core", "@fluent/bundle": "words" };

/** An import: `from` is the file, `to` the file or package as it is found from `src`. */
interface Import {
  from: string;
  to: string;
  package: boolean;
}

const IMPORT = /(?:\bfrom\s*|\bimport\s*\(?\s*|\bmock\(\s*)"([^"]+)"/g;

function importsOf(files: Record<string, string>): Import[] {
  return Object.entries(files).flatMap(([from, text]) =>
    [...text.matchAll(IMPORT)].map(([, to = ""]) => ({
      from,
      to: to.startsWith(".") ? joined(from, to) : to,
      package: !to.startsWith("."),
    })),
  );
}

/** The path from `src` to what a file names from where it is. */
function joined(from: string, to: string): string {
  const path = from.split("/").slice(0, -1);
  for (const part of to.split("/")) {
    if (part === "..") path.pop();
    else if (part !== ".") path.push(part);
  }
  return path.join("/");
}

/** The folder of the table that a file is in; the app's own is empty. */
function folderOf(path: string): string {
  const [first = "", second = "", ...rest] = path.split("/");
  if (second === "") return first in MAY ? first : "";
  return first === "screens" && rest.length > 0 ? `screens/${second}` : first;
}

/** What is wrong with an import; nothing where it may be. */
function wrong({ from, to, package: isPackage }: Import): string | null {
  const [own, other] = [folderOf(from), folderOf(to)];
  if (isPackage)
    return ONLY[to] === undefined || ONLY[to] === own ? null : `${from}: only ${ONLY[to]} may import ${to}`;
  if (own === "" || own === other) return null;
  const may = MAY[own];
  if (!may) return `${from}: the table has no folder ${own}`;
  return may.includes(other)
    ? null
    : `${from} imports ${to}: ${own} may not import from ${other || "the app"}`;
}

const sources = import.meta.glob<string>(["./**/*.ts", "./**/*.svelte", "!./folders.test.ts"], {
  query: "?raw",
  import: "default",
  eager: true,
});
const imports = importsOf(
  Object.fromEntries(Object.entries(sources).map(([path, text]) => [path.slice(2), text])),
);

test("a folder imports only from where the table lets it", () => {
  expect(imports.map(wrong).filter((said) => said !== null)).toEqual([]);
});

test("every edge of the table is needed, and every folder is there", () => {
  const used = new Set(imports.map(({ from, to }) => `${folderOf(from)} → ${folderOf(to)}`));
  const idle = Object.entries(MAY).flatMap(([own, may]) =>
    may.map((other) => `${own} → ${other}`).filter((edge) => !used.has(edge)),
  );
  expect(idle).toEqual([]);
  const folders = new Set(imports.map(({ from }) => folderOf(from)));
  expect(Object.keys(MAY).filter((folder) => !folders.has(folder))).toEqual([]);
});

test("no folder imports from itself by way of others", () => {
  const reached = (folder: string, seen = new Set<string>()): Set<string> => {
    for (const other of MAY[folder] ?? []) if (!seen.has(other)) reached(other, seen.add(other));
    return seen;
  };
  expect(Object.keys(MAY).filter((folder) => reached(folder).has(folder))).toEqual([]);
});

test("a broken edge is found and said, however it is written", () => {
  const files = {
    "parts/a.ts": 'import { b } from "../frame/b";',
    "state/a.ts": 'import type {\n  B,\n} from "../words/b";',
    "frame/drawing/a.svelte": 'import App from "../../App.svelte";',
    "words/a.ts": 'const b = await import("../core/b");',
    "plan/a.test.ts": 'vi.mock("../figures/b", b);',
    "entries/a.ts": 'import { invoke } from "@tauri-apps/api/core";',
    "new/a.ts": 'import "../core/b";',
    "screens/bay/a.ts": 'export { b } from "../photos/b";',
  };
  expect(importsOf(files).map(wrong)).toEqual([
    "parts/a.ts imports frame/b: parts may not import from frame",
    "state/a.ts imports words/b: state may not import from words",
    "frame/drawing/a.svelte imports App.svelte: frame may not import from the app",
    "words/a.ts imports core/b: words may not import from core",
    "plan/a.test.ts imports figures/b: plan may not import from figures",
    "entries/a.ts: only core may import @tauri-apps/api/core",
    "new/a.ts: the table has no folder new",
    "screens/bay/a.ts imports screens/photos/b: screens/bay may not import from screens/photos",
  ]);
});
