import { createHash } from 'node:crypto';
import { contentHash } from '../common/canonical.js';

/** What makes an entry the same entry again: kind, subjects in any order, day. Serves as its id, too. */
export function recordKey(kind: string, subjects: readonly string[], date: string): string {
  const key = `${kind}:${[...subjects].sort().join('/')}:${date}`;
  if (key.length <= 80) return key;
  return `${kind}:${createHash('sha256').update(key).digest('hex').slice(0, 16)}:${date}`;
}

export function readingKey(meter: string, asOf: string): string {
  return `${meter}@${asOf}`;
}

export function defectKey(subject: string, raisedOn: string): string {
  return `defect:${subject}:${raisedOn}`;
}

/** Tells the content of two entries of one key apart, whatever each is called. */
export function recordContent(record: object): string {
  return contentHash({ ...record, id: '' });
}

export function readingContent(dial: number): string {
  return String(dial);
}
