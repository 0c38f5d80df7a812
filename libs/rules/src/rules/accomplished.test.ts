import { describe, expect, it } from 'vitest';
import { inspector, mechanic, radioStation, recordOf } from '../../testing/builders.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { RecordHead } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { accomplished } from './accomplished.js';
import { asked } from './gaps.js';
import { entryOutcome } from './entry-outcome.js';
import { tasks } from './who-may.js';

const catalogue = { version: 'test', types: {} };
const test = (part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'transponder-test', subjects: ['xp1'], on: '2026-03-03', agency: radioStation, ...part });
const set = (calibratedUntil: string | null) => ({ instrument: { serial: 'TS-7', calibratedUntil } });

/** The first entry of those given, newest first, and the labels that keep it from counting. */
function judged(...records: readonly RecordHead[]) {
  const facts = factsOf(dossierOf({ status: { records } }), catalogue);
  const [first] = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
  if (!first) return null;
  return {
    outcome: entryOutcome(first),
    why: asked(first.clause)
      .filter((leaf) => leaf.inside !== 'met')
      .map((leaf) => leaf.label),
  };
}

describe('an entry counts only where everything asked of it is shown, and says why not', () => {
  it.each([
    ['everything shown', test(), 'met', []],
    ['a typed date', test({ evidence: 'reported' }), 'not-met', ['work-reported-entry-not-seen']],
    ['taken for granted', test({ evidence: 'assumed' }), 'not-met', ['assumed-entry-not-seen']],
    ['failed', test({ outcome: 'failed' }), 'not-met', ['outcome-does-not-count']],
    ['outcome not recorded', test({ outcome: null }), 'cannot-tell', ['outcome-recorded']],
    ['signed by a mechanic with inspection authorization', test({ agency: inspector }), 'not-met', ['signer-allowed']],
    ['nobody named', test({ agency: null }), 'cannot-tell', ['signer-allowed']],
    [
      'ratings of the station not recorded',
      test({ agency: { ...radioStation, ratings: null } }),
      'cannot-tell',
      ['signer-allowed'],
    ],
    [
      'certificate number not recorded',
      test({ agency: { ...radioStation, certificate: null } }),
      'cannot-tell',
      ['certificate-number'],
    ],
    ['test set in calibration through the day after', test(set('2026-03-04')), 'met', []],
    ['test set in calibration through the day itself', test(set('2026-03-03')), 'met', []],
    ['test set in calibration to the day before', test(set('2026-03-02')), 'not-met', ['in-calibration-on-the-day']],
    ['calibration of the test set not recorded', test(set(null)), 'cannot-tell', ['in-calibration-on-the-day']],
  ] as const)('%s', (_name, record, outcome, why) => {
    expect(judged(record)).toEqual({ outcome, why });
  });
});

describe('entries beside each other', () => {
  const older = test({ id: 'older', done: { date: '2026-01-10', at: null } });

  it.each([
    ['of another thing', test({ subjects: ['xp2'] })],
    ['of another kind', test({ kind: 'altimeter-test' })],
  ])('an entry %s is none', (_name, record) => {
    expect(judged(record)).toBeNull();
  });

  it('a newer one that failed takes the older ones away', () => {
    const facts = factsOf(dossierOf({ status: { records: [older, test({ outcome: 'failed' })] } }), catalogue);
    const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
    expect(counted.map(({ record }) => record.outcome)).toEqual(['failed']);
  });

  it('a newer one by the wrong hand, or with a test set out of calibration, leaves the older one in force', () => {
    for (const part of [{ agency: mechanic }, set('2026-03-02')]) {
      const facts = factsOf(dossierOf({ status: { records: [older, test(part)] } }), catalogue);
      const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
      expect(counted.map(entryOutcome)).toEqual(['not-met', 'met']);
    }
  });

  it('a newer one whose result is unknown puts the older one in doubt', () => {
    const facts = factsOf(dossierOf({ status: { records: [older, test({ outcome: null })] } }), catalogue);
    const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
    expect(counted.map(entryOutcome)).toEqual(['cannot-tell', 'cannot-tell']);
  });

  it('entries of several kinds stand newest first', () => {
    const records = [
      test({ id: 'kind-1', done: { date: '2026-01-10', at: null } }),
      test({ id: 'kind-2', kind: 'altimeter-test', done: { date: '2026-02-10', at: null } }),
    ];
    const facts = factsOf(dossierOf({ status: { records } }), catalogue);
    const counted = accomplished(facts, ['transponder-test', 'altimeter-test'], 'xp1', {});
    expect(counted.map(({ record }) => record.id)).toEqual(['kind-2', 'kind-1']);
  });

  it.each([{ outcome: 'failed' }, { outcome: null }] as const)(
    'a newer one with %j that nobody saw leaves the older one in force',
    (part) => {
      const facts = factsOf(
        dossierOf({ status: { records: [older, test({ ...part, evidence: 'reported' })] } }),
        catalogue,
      );
      const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
      expect(Object.fromEntries(counted.map((each) => [each.record.id, entryOutcome(each)]))).toMatchObject({
        older: 'met',
      });
    },
  );

  it('one whose result is unknown puts nothing in doubt that came after it', () => {
    const records = [
      test({ id: 'open', outcome: null, done: { date: '2026-01-10', at: null } }),
      test({ id: 'newer' }),
    ];
    const facts = factsOf(dossierOf({ status: { records } }), catalogue);
    const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
    expect(counted.map(entryOutcome)).toEqual(['met', 'cannot-tell']);
  });

  it('readings that fail supersede, though nobody recorded the outcome; doubt never makes better what does not count', () => {
    const readings = (record: RecordHead) => ({
      outcome: record.id === 'older' ? ('met' as const) : ('not-met' as const),
      source: tasks.transponderTest.source,
    });
    const facts = factsOf(dossierOf({ status: { records: [older, test({ outcome: null })] } }), catalogue);
    expect(accomplished(facts, ['transponder-test'], 'xp1', { readings }).map(entryOutcome)).toEqual(['not-met']);

    const unsigned = [test({ id: 'aa', agency: mechanic }), test({ id: 'bb', outcome: 'failed' })];
    const ofOneDay = factsOf(dossierOf({ status: { records: unsigned } }), catalogue);
    const counted = accomplished(ofOneDay, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
    expect(counted.map(entryOutcome)).toEqual(['not-met', 'not-met']);
  });

  it.each([
    ['aa', 'zz'],
    ['zz', 'aa'],
  ])(
    'passed and failed on one day without times: nobody knows which came last, whatever their names (%s, %s)',
    (one, other) => {
      const records = [older, test({ id: one }), test({ id: other, outcome: 'failed' })];
      const facts = factsOf(dossierOf({ status: { records } }), catalogue);
      const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
      expect(Object.fromEntries(counted.map((each) => [each.record.id, entryOutcome(each)]))).toEqual({
        [one]: 'cannot-tell',
        [other]: 'not-met',
      });
    },
  );

  it.each([
    ['failed, then passed', '10:00', '12:00', { passed: 'met', failed: 'not-met' }],
    ['passed, then failed', '12:00', '10:00', { failed: 'not-met' }],
  ])('%s on one day, by the clock', (_name, failedAt, passedAt, expected) => {
    const done = (time: string) => ({ date: '2026-03-03', at: `2026-03-03T${time}Z` });
    const records = [
      test({ id: 'failed', outcome: 'failed', done: done(failedAt) }),
      test({ id: 'passed', done: done(passedAt) }),
    ];
    const facts = factsOf(dossierOf({ status: { records } }), catalogue);
    const counted = accomplished(facts, ['transponder-test'], 'xp1', { by: tasks.transponderTest });
    expect(Object.fromEntries(counted.map((each) => [each.record.id, entryOutcome(each)]))).toEqual(expected);
  });
});
