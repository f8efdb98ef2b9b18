import { beforeEach, expect, test, vi } from "vitest";
import { openPlayed } from "./playedJob";

vi.mock("../core/call", async (original) => (await import("../core/played")).played(original));

const { pins } = await import("./pin.svelte");
const { shop } = await import("./shop.svelte");
const { troubles } = await import("./troubles.svelte");

beforeEach(openPlayed);

test("what the core asks PINs for is done again after each, and other troubles are told", async () => {
  let tries = 0;
  const work = async () => {
    tries += 1;
    if (tries === 1) throw { kind: "pin", message: "The PIN of R. Ode is needed.", pin_of: "o" };
    if (tries === 2) throw { kind: "pin", message: "The PIN of T. Marl is needed.", pin_of: "m" };
    return "done";
  };
  const asking = shop.withPin(work);
  await vi.waitFor(() => expect(pins.asked?.person).toBe("o"));
  pins.end(true);
  await vi.waitFor(() => expect(pins.asked?.person).toBe("m"));
  pins.end(true);
  expect([await asking, troubles.last]).toEqual(["done", null]);
  const failing = async () => {
    throw { kind: "store", message: "The disk is full." };
  };
  expect(await shop.withPin(failing)).toBeNull();
  expect(troubles.last?.message).toBe("The disk is full.");
});
