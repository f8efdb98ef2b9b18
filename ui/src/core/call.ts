// The one door to the core. Names and types of the commands are generated; see commands.ts.
import { invoke } from "@tauri-apps/api/core";
import type { Commands, RawCommand } from "./commands";
import type { EntryValue, Hash, JobId, PersonId, Trouble } from "./types";

/** Commands that write what stays. Two of them never come of one tap. */
const WRITES = new Set<keyof Commands>([
  "go_on",
  "put_backup_plan",
  "back_up",
  "restore",
  "salvage",
  "start",
  "enter",
  "put_person",
  "remove_person",
  "give_pin",
  "set_pin",
  "put_tool",
  "remove_tool",
  "name_device",
  "begin_sheet",
  "drop_sheet",
  "keep_sheet",
  "check_sheet",
  "export_sheet",
  "adopt_checklist",
  "drop_checklist",
  "export_checklist",
  "save_record",
]);

let told: (() => void) | null = null;

/** Has it told when such a command is begun, and when it is answered; answers how to end that. */
export function onCommand(tell: () => void): () => void {
  told = tell;
  return () => {
    told = null;
  };
}

/** Calls a command. It fails with a [Trouble], never with anything else. */
export async function call<Name extends keyof Commands>(
  name: Name,
  takes: Commands[Name]["takes"],
): Promise<Commands[Name]["answers"]> {
  const command = WRITES.has(name);
  if (command) told?.();
  try {
    return await invoke<Commands[Name]["answers"]>(name, takes);
  } catch (error) {
    throw asTrouble(error);
  } finally {
    if (command) told?.();
  }
}

/** More of a file than the core takes in of any: what is too large, it says itself, and nothing larger is in memory. */
const MOST_READ = 64 * 2 ** 20;

async function bytesOf(file: Blob): Promise<Uint8Array> {
  return new Uint8Array(await file.slice(0, MOST_READ).arrayBuffer());
}

/** Takes in a photo file for a job and answers the value to enter for it. */
export async function addPhoto(job: JobId, file: Blob): Promise<EntryValue> {
  const name: RawCommand = "add_photo";
  try {
    return await invoke<EntryValue>(name, await bytesOf(file), { headers: { job } });
  } catch (error) {
    throw asTrouble(error);
  }
}

/** Takes in a spec sheet's file for who works now and answers its id. */
export async function importSheet(file: Blob, who: PersonId | null): Promise<string> {
  const name: RawCommand = "import_sheet";
  try {
    return await invoke<string>(name, await bytesOf(file), { headers: { who: who ?? "" } });
  } catch (error) {
    throw asTrouble(error);
  }
}

/** Takes in a checklist's file and answers the hash of its text. */
export async function importChecklist(file: Blob): Promise<Hash> {
  const name: RawCommand = "import_checklist";
  try {
    return await invoke<Hash>(name, await bytesOf(file));
  } catch (error) {
    throw asTrouble(error);
  }
}

/** The bytes of a kept photo, whole or as its small picture. */
export async function photoBytes(which: "photo" | "thumbnail", hash: Hash): Promise<ArrayBuffer> {
  const name: RawCommand = which;
  try {
    return await invoke<ArrayBuffer>(name, { hash });
  } catch (error) {
    throw asTrouble(error);
  }
}

/** What a failed call threw. Arguments that the core can't read come as bare text. */
export function asTrouble(error: unknown): Trouble {
  if (typeof error === "object" && error !== null && "kind" in error && "message" in error) {
    return error as Trouble;
  }
  return { kind: "other", message: String(error), pin_of: null };
}
