import { expect, test } from "vitest";
import type { Actor, Person } from "../core/types";
import { acting, readSignature, resetters, signers } from "./people";

const ode: Person = { id: "o", name: "R. Ode", roles: ["technician"], lead: false };
const marl: Person = { id: "m", name: "T. Marl", roles: ["second_person"], lead: false };
const alone: Person = { id: "a", name: "A. Lone", roles: ["technician", "service_writer"], lead: true };
const works: Actor = { id: "o", role: "technician" };

function names(people: { name: string }[]): string[] {
  return people.map((one) => one.name);
}

test("who works now is offered first, others in the role that is asked for", () => {
  expect(names(signers(null, works, [ode, marl]))).toEqual(["R. Ode"]);
  expect(names(signers("technician", works, [marl, alone, ode]))).toEqual(["R. Ode", "A. Lone"]);
  expect(signers("service_writer", works, [ode, marl])).toEqual([]);
  expect(signers("service_writer", works, [ode, alone])).toEqual([
    { id: "a", name: "A. Lone", role: "service_writer" },
  ]);
});

test("anybody else is offered as the second person, also under the same name", () => {
  const other: Person = { ...ode, id: "other" };
  expect(signers("second_person", works, [ode, marl, other]).map((one) => one.id)).toEqual(["m", "other"]);
});

test("somebody who is several things acts as each of them", () => {
  expect(acting([alone]).map((one) => one.role)).toEqual(["technician", "service_writer"]);
});

test("a forgotten PIN is reset by a lead and a third, both with a PIN", () => {
  const pin = (person: string) => ({ person, how: "own_first" as const, on: "2026-03-02" });
  const found = resetters("o", [ode, marl, alone], [pin("o"), pin("m"), pin("a")]);
  expect([names(found.leads), names(found.seconds("a"))]).toEqual([["A. Lone"], ["T. Marl"]]);
  expect(resetters("a", [ode, marl, alone], [pin("o"), pin("m")]).leads).toEqual([]);
});

test("a kept signature is read, anything else is none", () => {
  expect(readSignature('{"sign":"a","by":"o","role":"technician"}')?.by).toBe("o");
  expect(readSignature("{")).toBeNull();
  expect(readSignature('"text"')).toBeNull();
  expect(readSignature(undefined)).toBeNull();
});
