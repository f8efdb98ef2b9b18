// Who is offered to act and to sign. Whether they may is decided by the core.
import type { Actor, Person, PersonId, PinHolder, Role, Signature } from "../core/types";

/** A person as one of what they are. */
export interface Acting extends Actor {
  name: string;
}

/** Everybody, once for each of what they are. */
export function acting(people: Person[]): Acting[] {
  return people.flatMap(({ id, name, roles }) => roles.map((role) => ({ id, name, role })));
}

/** Whether two are the same person as the same. */
export function same(one: Actor, other: Actor | null): boolean {
  return one.id === other?.id && one.role === other.role;
}

/**
 * Who works when the window opens: who did before, as far as they are still of the shop, else the first
 * technician, else anybody.
 */
export function whoWorks(people: Person[], before: Actor | null): Actor | null {
  const all = acting(people);
  const found =
    all.find((one) => same(one, before)) ?? all.find((one) => one.role === "technician") ?? all[0];
  return found ? { id: found.id, role: found.role } : null;
}

/**
 * Those who may be asked to sign, who works now first. Nobody named: who works now signs. A second person is anybody
 * else.
 */
export function signers(by: Role | null, worker: Actor | null, people: Person[]): Acting[] {
  if (by === "second_person") {
    const others = people.filter((person) => person.id !== worker?.id);
    return others.map(({ id, name }) => ({ id, name, role: by }));
  }
  const able = acting(people).filter((one) => (by === null ? same(one, worker) : one.role === by));
  return able.sort((one, other) => Number(other.id === worker?.id) - Number(one.id === worker?.id));
}

/** A person's signature under a sign-off. */
export function signature(sign: string, by: Actor): Signature {
  return { sign, by: by.id, role: by.role };
}

/** A signature that was kept as a draft; nothing where the text is none. */
export function readSignature(text: string | undefined): Signature | null {
  if (text === undefined) return null;
  try {
    const value = JSON.parse(text) as Partial<Signature>;
    return typeof value.sign === "string" && typeof value.by === "string" && value.role !== undefined
      ? { sign: value.sign, by: value.by, role: value.role }
      : null;
  } catch {
    return null;
  }
}

/** Who can be asked for their PIN, where one is forgotten: leads, and anybody else as the second person. */
export function resetters(
  person: PersonId,
  people: Person[],
  pins: PinHolder[],
): { leads: Person[]; seconds: (lead: PersonId) => Person[] } {
  const able = people.filter((one) => one.id !== person && pins.some((pin) => pin.person === one.id));
  return {
    leads: able.filter((one) => one.lead),
    seconds: (lead) => able.filter((one) => one.id !== lead),
  };
}
