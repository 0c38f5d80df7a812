import { expect, test } from 'vitest';
import type { Agency, Calibration, TestSet } from './query.js';
import { agencyStanding, asFoundWords, setStanding, spanWords } from './standing.js';

const check = (checkedOn: string, goodUntil: string | null, more: Partial<Calibration> = {}): Calibration => ({
  id: checkedOn,
  checkedOn,
  goodUntil,
  asFound: 'IN_TOLERANCE',
  certificate: null,
  struck: null,
  ...more,
});
const set = (calibrations: Calibration[], inUse = true): TestSet => ({
  id: 's',
  serial: 'TS-1',
  name: 'Ramp tester',
  inUse,
  revision: 1,
  calibratedUntil: null,
  calibrations,
});

test('a calibration is good through its last day and not a day longer', () => {
  const sets = set([check('2025-06-10', '2026-06-10')]);
  expect(setStanding(sets, '2026-06-10')).toEqual({ status: 'yes', word: 'Calibrated', days: 'through 10 Jun 2026' });
  expect(setStanding(sets, '2026-06-11')).toEqual({ status: 'no', word: 'Run out', days: 'through 10 Jun 2026' });
});

test('the newest check that was not struck out decides', () => {
  const struck = check('2026-02-01', '2027-02-01', { struck: 'Wrong set' });
  expect(setStanding(set([struck, check('2025-06-10', '2026-06-10')]), '2026-06-11').status).toBe('no');
  expect(setStanding(set([struck]), '2026-06-11').status).toBe('cannot-tell');
  const out = check('2026-03-01', null, { asFound: 'OUT_OF_TOLERANCE' });
  expect(setStanding(set([out, check('2025-06-10', '2026-06-10')]), '2026-03-02')).toEqual({
    status: 'no',
    word: 'Out of tolerance',
    days: 'found on 1 Mar 2026, not put right',
  });
  expect(setStanding(set([], false), '2026-03-02').word).toBe('Not in use');
});

test('an agency is held from its first through its last day', () => {
  const agency = (heldFrom: string | null, heldUntil: string | null, inUse = true): Agency => ({
    id: 'a',
    kind: 'REPAIR_STATION',
    name: 'Outside Avionics',
    certificate: null,
    ratings: null,
    heldFrom,
    heldUntil,
    inUse,
    revision: 1,
  });
  const on = (day: string) => agencyStanding(agency('2026-01-01', '2026-12-31'), day).status;
  expect([on('2025-12-31'), on('2026-01-01'), on('2026-12-31'), on('2027-01-01')]).toEqual([
    'not-judged',
    'yes',
    'yes',
    'no',
  ]);
  expect(agencyStanding(agency(null, null), '2026-01-01').days).toBe('no end recorded');
  expect(agencyStanding(agency(null, null, false), '2026-01-01').word).toBe('Not in use');
});

test('the days of a trace are said with their reason', () => {
  const calibration = { id: 'c', checkedOn: '2026-06-10', goodUntil: '2027-06-10' };
  expect(spanWords({ from: '2025-06-05', to: '2026-06-10', calibration })).toBe(
    'The last good calibration before was on 5 Jun 2025, so entries count from that day through 10 Jun 2026, when it was put right.',
  );
  expect(spanWords({ from: null, to: null, calibration })).toBe(
    'No good calibration is entered from before, so every entry counts; the set was not put right, so they count up to today.',
  );
  expect(spanWords({ from: '2025-06-05', to: '2026-07-20', calibration })).toMatch(/its next good calibration\.$/);
});

test('what a certificate does not say is not "in tolerance"', () => {
  expect(asFoundWords(check('2026-01-01', null, { asFound: null }))).toBe('not stated');
  expect(asFoundWords(check('2026-01-01', null, { asFound: 'OUT_OF_TOLERANCE' }))).toBe('out of tolerance');
});
