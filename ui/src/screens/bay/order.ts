// The jobs in the order in which they wait: open ones first, then those that have ended, by the day they did.
import type { JobLine } from "../../core/types";
import { dayAt } from "../../parts/time";

/** Jobs that stand together: the open ones, or those of a day. */
export interface JobGroup {
  /** The day on which they ended; null: they are open. */
  day: string | null;
  jobs: JobLine[];
}

/** The jobs in groups, what changed last first. */
export function grouped(jobs: JobLine[]): JobGroup[] {
  const newest = [...jobs].sort((one, other) => other.changed_ms - one.changed_ms);
  const open = newest.filter((job) => !job.ended);
  const groups: JobGroup[] = open.length > 0 ? [{ day: null, jobs: open }] : [];
  for (const job of newest.filter((one) => one.ended)) {
    const day = dayAt(job.changed_ms);
    const last = groups.at(-1);
    if (last && last.day === day) last.jobs.push(job);
    else groups.push({ day, jobs: [job] });
  }
  return groups;
}
