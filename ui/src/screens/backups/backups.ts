// What is said of a backup.
import type { BackupFacts } from "../../core/types";
import { say } from "../../words/say";

/** Entries and photos of a backup, and what its store no longer had whole. */
export function factsOf({ events, photos, lacks }: BackupFacts): string {
  const facts = say("screens-restore-facts", { count: events, photos });
  return lacks > 0 ? `${facts} ${say("screens-restore-lacking", { count: lacks })}` : facts;
}
