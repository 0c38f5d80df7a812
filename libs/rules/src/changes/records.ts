import type { Performed } from '../dossier/common.js';
import type { Obligation, RecordHead } from '../dossier/status.js';

/** Heads kept for each kind and subject; older ones live in the history. Part of version 1 of the record changes. */
const headsKept = 4;

/**
 * Newest by date performed, never by order of entry. A head that answers an obligation stays.
 * Several are kept, because the newest may be one that does not count (a failed test, an entry not seen).
 */
export function keepHeads(records: readonly RecordHead[], obligations: readonly Obligation[]): readonly RecordHead[] {
  const answering = new Set(obligations.map((each) => each.closedBy));
  const keep = new Set<string>();
  const groups = new Map<string, RecordHead[]>();
  for (const record of records) {
    if (answering.has(record.id)) keep.add(record.id);
    for (const subject of record.subjects) {
      const key = `${record.kind}|${subject}`;
      groups.set(key, [...(groups.get(key) ?? []), record]);
    }
  }
  for (const group of groups.values()) {
    for (const record of [...group].sort(newestFirst).slice(0, headsKept)) keep.add(record.id);
  }
  return records.filter((each) => keep.has(each.id));
}

/** Newest first by day, then by time where both have one, then by id so that the order is total. */
export function newestFirst(a: RecordHead, b: RecordHead): number {
  if (a.done.date !== b.done.date) return a.done.date < b.done.date ? 1 : -1;
  if (a.done.at !== null && b.done.at !== null && a.done.at !== b.done.at) return a.done.at < b.done.at ? 1 : -1;
  return a.id < b.id ? 1 : -1;
}

/** Whether the first was done later than the second. On one day only two times tell. */
export function orderOf(one: Performed, other: Performed): 'earlier' | 'later' | 'unknown' {
  if (one.date !== other.date) return one.date > other.date ? 'later' : 'earlier';
  if (one.at === null || other.at === null || one.at === other.at) return 'unknown';
  return one.at > other.at ? 'later' : 'earlier';
}
