import { expect, test } from 'vitest';
import type { Problem } from '../../app/problem.js';
import { keep, readKept } from './keep.js';
import type { RecordInput } from './query.js';
import { saveSheet, type Attempt, type Outcome } from './save.js';
import { blankEntry, type Batch } from './sheet.js';

const batch = (id: string, facts: Partial<Batch> = {}): Batch =>
  ({
    row: {
      aircraft: { id, registration: id.toUpperCase() },
      revision: 4,
      meters: [{ id: 'tach', name: 'Tachometer' }],
    },
    keys: [`${id} tach`],
    changes: [{ meterRead: { meter: 'tach', dial: 100, asOf: '2026-03-10T12:00Z', by: 'A' } }],
    open: [],
    mark: `mark of ${id}`,
    ...facts,
  }) as Batch;

const problem = (code: string, details: Record<string, unknown> = {}): Problem => ({
  code,
  title: `${code}.`,
  wayOut: 'Do this.',
  details,
});

/** Saves with a server that answers each aircraft as said: an entry number or a problem. */
async function save(
  batches: readonly Batch[],
  answers: Readonly<Record<string, number | Problem>>,
  attempts: Readonly<Record<string, Attempt>> = {},
) {
  const sent: RecordInput[] = [];
  const progress: string[] = [];
  const outcomes: Record<string, Outcome> = {};
  const kept: Record<string, Attempt | null> = { ...attempts };
  await saveSheet(batches, attempts, {
    send: (input) => {
      sent.push(input);
      const answer = answers[input.aircraftId];
      return typeof answer === 'number'
        ? Promise.resolve({ firstEntry: answer, lastEntry: answer })
        : Promise.reject(answer as unknown as Error);
    },
    problemOf: (error) => error as Problem,
    newKey: () => `key ${sent.length + 1}`,
    onProgress: (done, total) => progress.push(`${done}/${total}`),
    onOutcome: ({ row }, outcome) => (outcomes[row.aircraft.id] = outcome),
    keepAttempt: (id, attempt) => (kept[id] = attempt),
  });
  return { sent, progress, outcomes, kept };
}

test('each aircraft is a piece of work of its own, and the progress is told', async () => {
  const { sent, progress, outcomes, kept } = await save([batch('a'), batch('b')], { a: 5, b: 9 });
  expect(sent.map(({ aircraftId, expectedRevision, key }) => [aircraftId, expectedRevision, key])).toEqual([
    ['a', 4, 'key 1'],
    ['b', 4, 'key 2'],
  ]);
  expect(progress).toEqual(['0/2', '1/2', '2/2']);
  expect(outcomes).toEqual({
    a: { kind: 'recorded', firstEntry: 5, lastEntry: 5 },
    b: { kind: 'recorded', firstEntry: 9, lastEntry: 9 },
  });
  expect(kept).toEqual({ a: null, b: null });
});

test('one that waits, is refused or was changed meanwhile holds up no other', async () => {
  const refusals = [{ change: 0, message: 'The meter would run backwards.', wayOut: 'Read it again.' }];
  const { sent, outcomes } = await save([batch('a', { open: ['a tach'] }), batch('b'), batch('c'), batch('d')], {
    b: problem('REFUSED', { refusals }),
    c: problem('STALE_REVISION'),
    d: 7,
  });
  expect(sent.map((each) => each.aircraftId)).toEqual(['b', 'c', 'd']);
  expect(outcomes['a']).toEqual({ kind: 'waits' });
  expect(outcomes['b']).toEqual({
    kind: 'refused',
    why: 'Tachometer: The meter would run backwards. Read it again.',
  });
  expect(outcomes['c']?.kind).toBe('meanwhile');
  expect(outcomes['d']?.kind).toBe('recorded');
});

test.each(['OFFLINE', 'SIGNED_OUT'])('after %s the rest is not sent, and says so', async (code) => {
  const { sent, outcomes, progress } = await save([batch('a'), batch('b')], { a: problem(code), b: 5 });
  expect(sent.length).toBe(1);
  expect([outcomes['a'], outcomes['b']]).toEqual([
    { kind: 'not-sent', why: `${code}. Do this.` },
    { kind: 'not-sent', why: `${code}. Do this.` },
  ]);
  expect(progress.at(-1)).toBe('2/2');
});

test('a request whose answer was lost is sent again as it was; with other content it is another', async () => {
  const first = await save([batch('a')], { a: problem('OFFLINE') });
  const attempt = first.kept['a'];
  expect(attempt?.input.key).toBe('key 1');
  const attempts = { a: attempt as Attempt };
  const later = batch('a', { row: { ...batch('a').row, revision: 5 } });
  const again = await save([later], { a: 5 }, attempts);
  expect(again.sent).toEqual([attempt?.input]);
  expect(again.kept['a']).toBeNull();
  const other = await save([{ ...later, mark: 'other' }], { a: 5 }, attempts);
  expect(other.sent[0]).toMatchObject({ expectedRevision: 5 });
  expect((await save([batch('a')], { a: problem('REFUSED') })).kept['a']).toBeNull();
});

test('what is typed is kept for its person, and not what is empty', () => {
  const stored = new Map<string, string>();
  const storage = {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, value: string) => void stored.set(key, value),
    removeItem: (key: string) => void stored.delete(key),
  };
  const entries = { 'a tach': { ...blankEntry, dial: '5' }, 'b tach': blankEntry };
  expect(keep(storage, 'one', { entries, attempts: {} })).toBe(true);
  expect(readKept(storage, 'one')).toEqual({ entries: { 'a tach': { ...blankEntry, dial: '5' } }, attempts: {} });
  expect(readKept(storage, 'two').entries).toEqual({});
  keep(storage, 'one', { entries: { 'b tach': blankEntry }, attempts: {} });
  expect(stored.size).toBe(0);
  stored.set('tallywing.meters.one', '{"version":0,"entries":5}');
  expect(readKept(storage, 'one').entries).toEqual({});
  const full = {
    ...storage,
    setItem: () => {
      throw new Error('full');
    },
  };
  expect(keep(full, 'one', { entries, attempts: {} })).toBe(false);
});
