// The one door to the core. Names and types of the commands are generated; see commands.ts.
import { invoke } from "@tauri-apps/api/core";
import type { Commands, RawCommand } from "./commands";
import type { EntryValue, Hash, JobId, Trouble } from "./types";

/** Calls a command. It fails with a [Trouble], never with anything else. */
export async function call<Name extends keyof Commands>(
  name: Name,
  takes: Commands[Name]["takes"],
): Promise<Commands[Name]["answers"]> {
  try {
    return await invoke<Commands[Name]["answers"]>(name, takes);
  } catch (error) {
    throw asTrouble(error);
  }
}

/** Takes in a photo's bytes for a job and answers the value to enter for it. */
export async function addPhoto(job: JobId, bytes: Uint8Array): Promise<EntryValue> {
  const name: RawCommand = "add_photo";
  try {
    return await invoke<EntryValue>(name, bytes, { headers: { job } });
  } catch (error) {
    throw asTrouble(error);
  }
}

/** Takes in a spec sheet by the bytes of its file and answers its id. */
export async function importSheet(bytes: Uint8Array): Promise<string> {
  const name: RawCommand = "import_sheet";
  try {
    return await invoke<string>(name, bytes);
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
