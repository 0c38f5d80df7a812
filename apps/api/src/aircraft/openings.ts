import { instantOf } from '../common/clock.js';
import type { Row } from './judge.js';

/**
 * A judgement begins with its day, so a finding that is already open seems to open then. Where the stored findings knew it
 * open before, its opening stays; where they did not, it opens now, with the work that is being recorded.
 */
export function carryOpenings(old: readonly Row[], judged: readonly Row[], now: Date): readonly Row[] {
  const dayStart = `${now.toISOString().slice(0, 10)}T00:00Z`;
  const nowInstant = instantOf(now);
  const known = new Map<string, string>();
  for (const row of old) {
    const opened = String(row['opens_at']);
    const closes = row['closes_at'];
    const reaches = closes === null || closes === undefined || String(closes) > dayStart;
    const earlier = known.get(identity(row));
    if (opened <= nowInstant && reaches && (earlier === undefined || opened < earlier))
      known.set(identity(row), opened);
  }
  return judged.map((row) =>
    row['opens_at'] === dayStart && (row['closes_at'] === null || String(row['closes_at']) > nowInstant)
      ? { ...row, opens_at: known.get(identity(row)) ?? nowInstant }
      : row,
  );
}

function identity(row: Row): string {
  return JSON.stringify([row['rule_id'], row['subject'], row['outcome'], row['above'], row['up_to']]);
}
