// What the page has to know of a kind of entry. Each kind is a file here and a row in the table.
import type { Component } from "svelte";
import type { Ask, EntryValue, EntryView, Hash, ItemView, Preview, StepView } from "../../core/types";

type KeysOf<Union> = Union extends unknown ? keyof Union : never;

/** The kinds of entry that are typed. A signature is none of them: it is given on the step sheet. */
export type KindId = Exclude<KeysOf<Ask>, "sign_off">;

/** An entry of a kind. */
export type EntryOf<Id extends KindId> = Id extends unknown
  ? Omit<EntryView, "ask"> & { ask: Extract<Ask, Record<Id, unknown>> }
  : never;

/** The part of a value that belongs to a kind. */
export type ValueOf<Id extends KindId> = Id extends unknown
  ? Extract<EntryValue, Record<Id, unknown>>[Id & keyof Extract<EntryValue, Record<Id, unknown>>]
  : never;

/** What a pad is given. */
export interface PadProps<Id extends KindId, Typed> {
  step: StepView;
  entry: EntryOf<Id>;
  /** What is asked for, in a few words. */
  asked: string;
  value: Typed;
  /** What the core says of the value; null while it has not said. */
  answer: Preview | null;
  change: (value: Typed) => void;
  /** Changes the value and enters it in one go. */
  enter: (value: Typed) => void;
  /** A part of the pad lies over the rest, such as the list of tools. */
  inner: boolean;
  lay: (inner: boolean) => void;
}

/** A kind of entry; `Typed` is its value while it is typed and something can be missing yet. */
export interface EntryKind<Id extends KindId, Typed> {
  /** Where it is typed. */
  pad: Component<PadProps<Id, Typed>>;
  /** Where typing begins. */
  empty(entry: EntryOf<Id>): Typed;
  /** Whether what was kept can be gone on with. */
  fits(found: unknown, entry: EntryOf<Id>): found is Typed;
  /** Whether nothing is typed yet. */
  isBlank(typed: Typed): boolean;
  /** The value to enter, or the id of the message that says what is missing. */
  value(typed: Typed): { value: ValueOf<Id> } | { missing: string };
  /** A value in short. */
  text(value: ValueOf<Id>, entry: EntryOf<Id>, items: ItemView[]): string;
  /** What is asked for beside the limits, in a few words. */
  asked?(entry: EntryOf<Id>): string[];
  /** A draft made ready to go on with. */
  open?(typed: Typed, entry: EntryOf<Id>): Typed;
  /** Nothing is left to press: what stands is entered as it is given. */
  isOneTap?(typed: Typed, entry: EntryOf<Id>): boolean;
  /** The picture that is shown for a value. */
  picture?(value: ValueOf<Id>): Hash;
  /** The core's sentence tells the value by itself. */
  isToldBySentence?(value: ValueOf<Id>): boolean;
  /** The value says already what its sentence would. */
  saysItself?: true;
}

/** A kind for the table, which does not know what each keeps while it is typed. */
export function kind<Id extends KindId, Typed>(of: EntryKind<Id, Typed>): EntryKind<Id, unknown> {
  return of as unknown as EntryKind<Id, unknown>;
}
