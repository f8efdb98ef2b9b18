import { expect, test } from "vitest";
import type { Actor } from "../core/types";
import { readSignature, signers } from "./people";

const ode: Actor = { name: "R. Ode", role: "technician" };
const marl: Actor = { name: "T. Marl", role: "second_person" };

test("who works now is offered first, others only in the role that is asked for", () => {
  expect(signers(null, ode, [ode, marl])).toEqual([ode]);
  expect(signers("second_person", ode, [ode, marl])).toEqual([marl]);
  expect(signers("technician", ode, [marl, ode])).toEqual([ode]);
  expect(signers("service_writer", ode, [ode, marl])).toEqual([]);
});

test("a kept signature is read, anything else is none", () => {
  expect(readSignature('{"sign":"a","by":"R. Ode","role":"technician"}')?.by).toBe("R. Ode");
  expect(readSignature("{")).toBeNull();
  expect(readSignature('"text"')).toBeNull();
  expect(readSignature(undefined)).toBeNull();
});
