// Who is offered to sign. Whether a signature counts is decided by the core.
import type { Actor, Role, Signature } from "../core/types";

/** Those who may be asked to sign, who works now first. Nobody named: who works now signs. */
export function signers(by: Role | null, actor: Actor | null, people: Actor[]): Actor[] {
  if (by === null) return actor ? [actor] : [];
  const rest = people.filter((person) => person.role === by && person.name !== actor?.name);
  return actor?.role === by ? [actor, ...rest] : rest;
}

/** A person's signature under a sign-off. */
export function signature(sign: string, person: Actor): Signature {
  return { sign, by: person.name, role: person.role };
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
