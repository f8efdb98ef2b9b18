// Sign-offs that have lapsed, by the event that made them lapse. Whether one can be renewed is in the view.
import type { Mark, SignView } from "../core/types";

/** Sign-offs that one event made lapse. */
export interface LapsedGroup {
  /** The event: when, and who asked for it. */
  mark: Mark;
  /** Those that can be signed again now. */
  open: SignView[];
}

/** What can be signed again, what changed last first. */
export function renewable(signs: SignView[]): LapsedGroup[] {
  const groups = new Map<number, LapsedGroup>();
  for (const sign of lapsed(signs).filter((sign) => sign.renew === null)) {
    const mark = sign.last?.lapsed;
    if (!mark) continue;
    const group = groups.get(mark.seq) ?? { mark, open: [] };
    groups.set(mark.seq, { mark, open: [...group.open, sign] });
  }
  return [...groups.values()].sort((one, other) => other.mark.seq - one.mark.seq);
}

/** What has lapsed and can't be signed again now. */
export function notNow(signs: SignView[]): SignView[] {
  return lapsed(signs).filter((sign) => sign.renew !== null);
}

function lapsed(signs: SignView[]): SignView[] {
  return signs.filter((sign) => !sign.valid && sign.last?.lapsed);
}
