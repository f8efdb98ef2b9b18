// The window's own words, by Fluent. What the core says comes said from the core, by files beside these.
import { FluentBundle, FluentResource, type FluentVariable } from "@fluent/bundle";

const files = import.meta.glob<string>("../../../src-tauri/messages/en/window/*.ftl", {
  query: "?raw",
  import: "default",
  eager: true,
});

const bundle = new FluentBundle("en", { useIsolating: false });
for (const text of Object.values(files)) {
  for (const error of bundle.addResource(new FluentResource(text))) {
    throw error;
  }
}

/** The sentence of a message id. One that is not there is a mistake in the program, and told by its id. */
export function say(id: string, args: Record<string, FluentVariable> = {}): string {
  const pattern = bundle.getMessage(id)?.value;
  return pattern ? bundle.formatPattern(pattern, args) : id;
}

/** Whether there is a sentence for an id. */
export function canSay(id: string): boolean {
  return bundle.hasMessage(id);
}
