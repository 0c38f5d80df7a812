import { replay, type Catalogue, type Change } from '@tallywing/rules';
import { blankDossier } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { entryInput, releaseOf, type ReleaseDraft } from './release.js';

const catalogue: Catalogue = { version: 'none', types: {} };
const now = '2026-11-25T16:00Z';
const aircraft = {
  kind: 'aircraft.add',
  version: 1,
  aircraft: { ...blankDossier('a').configuration.aircraft, registration: 'TW-07Q', kind: 'airplane' },
} as Change;
const work = {
  kind: 'work.done',
  version: 1,
  what: 'Looms moved',
  unitId: null,
  touched: ['behind-panel', 'static-system'],
  performed: { date: '2026-11-25', at: '2026-11-25T12:00Z' },
} as Change;
const draft: ReleaseDraft = {
  name: 'Ada Brook',
  certificate: { kind: 'MECHANIC', number: 'TW-M-1', ratings: ['AIRFRAME'] },
  date: '2026-11-25',
  at: '2026-11-25T15:00Z',
  note: 'Looms moved by the plan',
  book: '',
  page: '',
};
const view = (part: Partial<ReleaseDraft> = {}, openAtStart: readonly string[] = []) =>
  releaseOf({ ...draft, ...part }, 'r1', { openAtStart }, replay([aircraft, work], 'a'), catalogue, now);
const keys = (list: readonly { readonly key: string }[]) => list.map(({ key }) => key);
const controls = 'controls-free-and-secured|controls-check:aircraft';
const leak = 'tests-after-change|static-leak-test:aircraft';
const owedEntry = 'tests-after-change|release-entry:aircraft';

test('until somebody is named there is no entry, and the one that is owed stands among what stops the release', () => {
  const { entry, stops } = view({ name: ' ' });
  expect(entry).toBeNull();
  expect(keys(stops)).toContain(owedEntry);
});

test('the entry being written closes what waits for it; what it does not close stops it, or stays open and is looked at', () => {
  const { entry, stops, stays } = view();
  expect(entry?.subjects).toEqual(['aircraft']);
  expect(keys(stops)).toEqual([controls]);
  expect(keys(stays)).toContain(leak);
});

test('what was open before the work began is looked at, not closed', () => {
  const { stops, stays } = view({}, [controls]);
  expect(stops).toEqual([]);
  expect(keys(stays)).toContain(controls);
});

test.each([
  ['a signer who may not', { certificate: { ...draft.certificate, ratings: ['POWERPLANT'] as const } }],
  ['ratings that nobody recorded', { certificate: { ...draft.certificate, ratings: null } }],
  ['no description and no data', { note: ' ' }],
])('%s stops the release whatever was open before', (_, part) => {
  const { stops } = view(part, [controls, 'authorised-person|r1', 'release-entry|r1']);
  expect(stops.some(({ subject }) => subject === 'r1')).toBe(true);
});

test('it is sent in the spelling of the API', () => {
  const { entry } = view({ book: 'Log 2', page: '7' });
  if (entry === null) throw new Error('no entry');
  expect(entryInput(entry)).toMatchObject({
    kind: 'RELEASE_ENTRY',
    evidence: 'ENTRY_SEEN',
    outcome: 'APPROVED',
    entry: { book: 'Log 2', page: '7' },
    agency: { kind: 'MECHANIC', name: 'Ada Brook', certificate: 'TW-M-1', ratings: ['AIRFRAME'] },
  });
});
