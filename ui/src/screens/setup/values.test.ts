import { beforeEach, expect, test, vi } from "vitest";
import { asked, askedFor, core, opens } from "../../core/played";
import type { ShopValue } from "../../core/types";

vi.mock("../../core/call", async (original) => (await import("../../core/played")).played(original));

const { openWindow } = await import("../../state/opening");
const { remembered } = await import("../../state/remembered.svelte");
const { troubles } = await import("../../state/troubles.svelte");
const { values } = await import("./values.svelte");

const offered = {
  value: { is: { measure: { value: "48", unit: "°C" } }, source: "common practice" },
  view: { key: "touch_limit", problems: [] },
  kept: null,
  seen: [],
} as unknown as ShopValue;
const kept: ShopValue = { ...offered, kept: { by: "R. Ode", on: "2026-03-02" }, seen: ["h1"] };

beforeEach(async () => {
  opens([{ id: "o", name: "R. Ode", roles: ["technician"], lead: false }]);
  core.shop_values = [offered];
  core.judge_shop_value = offered.view;
  core.put_shop_value = [kept];
  troubles.last = null;
  await openWindow();
  await values.load();
  asked.length = 0;
});

test("what is offered is kept by one tap, for who works now", async () => {
  await values.confirm(offered);
  const value = { key: "touch_limit", seen: [], value: offered.value };
  expect(askedFor("put_shop_value")).toEqual([{ value, who: "o" }]);
  expect(values.list).toEqual([kept]);
});

test("another value is remembered with every key until it is kept", async () => {
  values.begin(offered);
  values.type({ ...offered.value, is: { measure: { value: "50", unit: "°C" } } });
  expect(remembered.shopValue?.value.is).toEqual({ measure: { value: "50", unit: "°C" } });
  await values.keepTyped();
  expect(askedFor("put_shop_value")).toHaveLength(1);
  expect([remembered.shopValue, values.list]).toEqual([null, [kept]]);
});

test("what can't be kept stays typed and is told", async () => {
  core.put_shop_value = new Error("This shop value was changed meanwhile.");
  values.begin(offered);
  await values.keepTyped();
  expect(troubles.last?.message).toBe("This shop value was changed meanwhile.");
  expect(remembered.shopValue?.key).toBe("touch_limit");
  values.close();
});
