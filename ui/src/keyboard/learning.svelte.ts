// Learning a key of a remote: the next key that is pressed is the one, where it may be.
import { notice } from "../state/notice.svelte";
import { remembered } from "../state/remembered.svelte";
import type { RemoteAction } from "../state/where";
import { say } from "../words/say";
import { keyName, type Pressed, type Refused, refusal } from "./remote";

class Learning {
  /** What a key is learned for; null: none is. */
  action = $state<RemoteAction | null>(null);
  /** What is said of the key that was pressed last. */
  said = $state<string | null>(null);

  begin(action: RemoteAction): void {
    this.action = action;
    this.said = null;
  }

  end(): void {
    this.action = null;
  }

  /** Takes the key that was pressed, or says why it can't be chosen. Escape ends it. */
  take(pressed: Pressed): void {
    const { action } = this;
    if (action === null) return;
    if (pressed.key === "Escape") {
      this.said = null;
      this.end();
      return;
    }
    const why = refusal(remembered.remote, action, pressed);
    if (why !== null) {
      this.said = saysRefused(why);
      notice.hear("refused");
      return;
    }
    remembered.put({ remote: { ...remembered.remote, [action]: pressed.key } });
    this.said = say("screens-remote-chosen", { key: keyName(pressed.key), does: actionName(action) });
    this.end();
  }

  /** Takes a key away. */
  takeAway(action: RemoteAction): void {
    this.said = null;
    this.end();
    remembered.put({ remote: { ...remembered.remote, [action]: null } });
  }
}

export const learning = new Learning();

/** What an action is called. */
export function actionName(action: RemoteAction): string {
  return say(`screens-remote-${action}`);
}

function saysRefused(why: Refused): string {
  if (why === "alone") return say("screens-remote-alone");
  if ("typing" in why) return say("screens-remote-typing", { key: keyName(why.typing) });
  if ("own" in why) return say("screens-remote-own", { key: keyName(why.own) });
  return say("screens-remote-taken", { does: actionName(why.taken) });
}
