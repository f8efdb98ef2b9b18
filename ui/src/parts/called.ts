// What a person is called: in the shop, else in the job that is open.
import type { PersonId } from "../core/types";
import { currentJob } from "../state/currentJob.svelte";
import { shop } from "../state/shop.svelte";
import { say } from "../words/say";

export function called(id: PersonId): string {
  const named =
    shop.setup.people.find((one) => one.id === id) ??
    currentJob.page?.view.people.find((one) => one.id === id);
  return named?.name ?? say("frame-who-nobody");
}
