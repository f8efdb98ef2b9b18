// The table of the kinds of entry. A kind that the core has and the table lacks does not compile.
import type { EntryView } from "../../core/types";
import { authorization } from "./authorization";
import { balance } from "./balance";
import { choice } from "./choice";
import { coil } from "./coil";
import { coils } from "./coils";
import { coolDown } from "./coolDown";
import { count } from "./count";
import { decision } from "./decision";
import { estimate } from "./estimate";
import type { EntryKind, EntryOf, KindId } from "./kind";
import { level } from "./level";
import { note } from "./note";
import { photo } from "./photo";
import { reading } from "./reading";
import { scan } from "./scan";
import { several } from "./several";
import { timer } from "./timer";
import { torque } from "./torque";

const KINDS = {
  reading,
  level,
  coil,
  coils,
  cool_down: coolDown,
  balance,
  count,
  torque,
  photo,
  choice,
  several,
  decision,
  scan,
  timer,
  note,
  estimate,
  authorization,
} satisfies { [Id in KindId]: EntryKind<Id, unknown> };

/** An entry that is typed. */
export type TypedEntry = EntryOf<KindId>;

/** Whether an entry is typed; else it is a signature, which is given on the step sheet. */
export function isTyped(entry: EntryView): entry is TypedEntry {
  return !("sign_off" in entry.ask);
}

/** The kind of an entry, with its name. */
export function kindOf(entry: TypedEntry): { id: KindId; kind: EntryKind<KindId, unknown> } {
  const [id] = Object.keys(entry.ask) as [KindId];
  // Each kind is given only its own entries and values: those of `entry`, and what its own `fits` let through.
  return { id, kind: KINDS[id] as unknown as EntryKind<KindId, unknown> };
}
