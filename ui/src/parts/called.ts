// What a person is called: in the shop, else in the job that is open.
import { bench } from "../bench.svelte";
import type { PersonId } from "../core/types";
import { say } from "../words/say";

export function called(id: PersonId): string {
  const named =
    bench.kit.people.find((one) => one.id === id) ?? bench.page?.view.people.find((one) => one.id === id);
  return named?.name ?? say("frame-who-nobody");
}
