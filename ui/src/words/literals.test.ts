// No text that a person reads stands in the markup: every word goes through `say`, so that it can be said in any language.
import { type AST, parse } from "svelte/compiler";
import { expect, test } from "vitest";

const components = import.meta.glob<string>("../**/*.svelte", {
  query: "?raw",
  import: "default",
  eager: true,
});

/** Attributes that are shown or read aloud. */
const SPOKEN = new Set([
  "alt",
  "aria-description",
  "aria-label",
  "aria-roledescription",
  "aria-valuetext",
  "label",
  "placeholder",
  "title",
]);
/** Letters that are symbols of units, the same in every language, and the program's name. */
const SYMBOLS = /\b(?:[NLVAKCF]|N·m|mm|cm|kg|mi|km|qt|Panside|VIN|PIN|mV|Ω)\b/g;

function isWords(text: string): boolean {
  return /\p{L}{2,}/u.test(text.replace(SYMBOLS, ""));
}

/** Every text of a component's markup that stands there as it is, and is shown. */
function literals(source: string): string[] {
  const found: string[] = [];
  const visit = (node: unknown, shown: boolean): void => {
    if (Array.isArray(node)) for (const each of node) visit(each, shown);
    else if (node !== null && typeof node === "object") {
      const { type, name } = node as { type?: string; name?: string };
      if (type === "Text" && shown) found.push((node as AST.Text).data.trim());
      if ((type === "Literal" || type === "TemplateElement") && shown) found.push(textOf(node as Literal));
      for (const [key, child] of Object.entries(node)) visit(child, isShown({ type, name, key }, shown));
    }
  };
  visit(parse(source, { modern: true }).fragment, true);
  return found.filter(isWords);
}

type Literal = { value?: unknown };

function textOf({ value }: Literal): string {
  if (typeof value === "string") return value;
  return typeof value === "object" && value !== null && "raw" in value ? String(value.raw) : "";
}

/** Whether what stands below is shown: texts of elements and of spoken attributes are, code is not. */
function isShown(
  { type, name, key }: { type: string | undefined; name: string | undefined; key: string },
  shown: boolean,
): boolean {
  if (type === "Attribute") return SPOKEN.has(name ?? "");
  if (type === "CallExpression" || type === "BinaryExpression" || type === "MemberExpression") return false;
  if (type === "ConditionalExpression" && key === "test") return false;
  // What a block asks, what is bound, and what a directive does is code.
  if (
    ["IfBlock", "EachBlock", "KeyBlock", "AwaitBlock", "SnippetBlock", "RenderTag", "ConstTag"].includes(
      type ?? "",
    )
  ) {
    return ["consequent", "alternate", "body", "fragment", "pending", "then", "catch", "fallback"].includes(
      key,
    );
  }
  if (type?.endsWith("Directive") || type === "AttachTag") return false;
  return shown || key === "fragment";
}

test("no text that is shown stands in the markup", () => {
  const found = Object.entries(components).flatMap(([file, source]) =>
    literals(source).map((text) => `${file}: ${text}`),
  );
  expect(found).toEqual([]);
});

const scripts = import.meta.glob<string>(
  ["../**/*.ts", "!../**/*.test.ts", "!../core/**", "!../state/playedJob.ts"],
  { query: "?raw", import: "default", eager: true },
);

/** A quoted sentence: a capital, and a second word. */
const SENTENCE = /(["'`])[A-Z][a-z]+ [a-z]+[^"'`\n]*\1/g;

/** Sentences of a script, but not of its comments. */
function sentences(source: string): string[] {
  return source.replace(/\/\*.*?\*\/|\/\/[^\n]*/gs, "").match(SENTENCE) ?? [];
}

test("no sentence stands in a script", () => {
  const found = Object.entries(scripts).flatMap(([file, source]) =>
    sentences(source).map((text) => `${file}: ${text}`),
  );
  expect(found).toEqual([]);
  expect(sentences('notice.tell("Not entered yet"); // "Told so"')).toEqual(['"Not entered yet"']);
});

test("a text, a spoken attribute and a chosen text are found, and code is not", () => {
  expect(literals("<p class='note'>Not yet</p>")).toEqual(["Not yet"]);
  expect(literals('<button aria-label="Take it back">{count} {unit}</button>')).toEqual(["Take it back"]);
  expect(literals('<p>{open ? "is open" : say("frame-closed")}</p>')).toEqual(["is open"]);
  expect(literals('{#if kind === "note"}<p class="long">{say("sheet-note")}</p>{/if}')).toEqual([]);
});
