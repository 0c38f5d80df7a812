import type { RecordKind } from '../dossier/status.js';
import type { Remedy } from '../verdict/result.js';

/** Do it and record the entry. The remedy's subject is the kind of entry, with the thing it is about unless that is the aircraft. */
export function recordIt(kind: RecordKind, subject = 'aircraft'): Remedy {
  return { kind: 'do', change: 'record.add', subject: entryOf(kind, subject), facts: [] };
}

/** An entry may exist that nobody recorded. */
export function findEntry(kind: RecordKind, subject = 'aircraft'): Remedy {
  return { kind: 'find-out', change: 'record.add', subject: entryOf(kind, subject), facts: ['status.records'] };
}

export function findOut(change: string, subject: string, ...facts: readonly string[]): Remedy {
  return { kind: 'find-out', change, subject, facts };
}

function entryOf(kind: RecordKind, subject: string): string {
  return subject === 'aircraft' ? kind : `${kind}:${subject}`;
}
