import type { Hold } from './status.js';

const prefix = 'job:';

/** A job in work holds the aircraft under its own name, so that two jobs hold it twice. `time` counts how often it was taken up. */
export function holdOfJob(jobId: string, time = 1): string {
  return time === 1 ? `${prefix}${jobId}` : `${prefix}${jobId}:${time}`;
}

/** The job that placed a hold; null: a person did. */
export function jobOfHold(holdId: string): string | null {
  return holdId.startsWith(prefix) ? (holdId.slice(prefix.length).split(':')[0] ?? null) : null;
}

/** Holds that keep an aircraft on the ground at an instant. */
export function holdsAt(holds: readonly Hold[], instant: string): readonly Hold[] {
  return holds.filter((each) => each.from <= instant && (each.until === null || instant < each.until));
}
