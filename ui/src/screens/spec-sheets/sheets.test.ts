import { beforeEach, expect, test, vi } from "vitest";
import { asked, askedFor, core, opens } from "../../core/played";
import type { SheetPage, TypedSheet } from "../../core/types";

vi.mock("../../core/call", async (original) => (await import("../../core/played")).played(original));

const { nav } = await import("../../state/nav.svelte");
const { openWindow } = await import("../../state/opening");
const { remembered } = await import("../../state/remembered.svelte");
const { troubles } = await import("../../state/troubles.svelte");
const { sheets } = await import("./sheets.svelte");

const ode = { id: "o", role: "technician" as const };

function page(typed: Partial<TypedSheet> = {}): SheetPage {
  const whole = {
    draft: "our-van",
    id: "our-van",
    revision: 2,
    made_from: "c2",
    seen: ["h2"],
    checklist: "pan-short",
    title: "Our van",
    demo: false,
    source: "",
    values: { fluid: { is: { text: "red" }, source: "page 3" } },
    ...typed,
  };
  return {
    typed: whole,
    typing: true,
    built_in: false,
    fits: [],
    checklists: [],
    view: { title: null, values: [] },
  };
}

function lastTyped(): TypedSheet | undefined {
  return askedFor("type_sheet").at(-1)?.typed as TypedSheet | undefined;
}

beforeEach(async () => {
  opens([{ id: "o", name: "R. Ode", roles: ["technician"], lead: false }]);
  core.begin_sheet = page();
  core.type_sheet = ({ typed }: { typed: TypedSheet }) => page(typed);
  troubles.last = null;
  await openWindow();
  await sheets.begin({ edit: "our-van" });
  asked.length = 0;
});

test("what is typed is sent with every key and the newest is what stands", async () => {
  sheets.title("Our vans");
  sheets.value("fluid", { is: { text: "green" }, source: "page 4" });
  core.keep_sheet = "our-van";
  expect(await sheets.keep()).toBe(true);
  const last = lastTyped();
  expect([last?.title, last?.values.fluid?.source]).toEqual(["Our vans", "page 4"]);
  expect(asked.at(-2)?.[0] ?? "").toBe("keep_sheet");
  expect(askedFor("keep_sheet")).toEqual([{ draft: "our-van", actor: ode }]);
});

test("what can't be written is told and stays on the screen", async () => {
  core.type_sheet = new Error("The disk is full.");
  sheets.title("Our vans");
  await vi.waitFor(() => expect(troubles.last?.message).toBe("The disk is full."));
  expect(sheets.typed?.title).toBe("Our vans");
});

test("what is put away can be put back as it was typed", async () => {
  sheets.title("Our vans");
  await sheets.drop();
  expect(askedFor("drop_sheet")).toEqual([{ draft: "our-van" }]);
  expect(nav.screen).toBe("setup");
  await sheets.putBack();
  expect(lastTyped()?.title).toBe("Our vans");
  expect([nav.screen, sheets.dropped]).toEqual(["sheet", null]);
});

test("the window comes back to the sheet and the value that was open", async () => {
  nav.lookAtSheet({ id: "our-van", typing: true, value: "fluid", compared: null });
  const window = askedFor("put_setting").at(-1)?.text as string;
  nav.go("bay");
  remembered.sheet = null;
  core.opened = { ...(core.opened as object), window };
  await openWindow();
  expect(remembered).toMatchObject({ screen: "sheet", sheet: { id: "our-van", value: "fluid" } });
});
