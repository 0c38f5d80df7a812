import { defaultLabour } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { assumptionWords, jobWords, moneyWords, spanWords, stepWords } from './way-back.js';

const step = (job: string, subjects: readonly string[] = [], change: string | null = 'record.add') => ({
  job,
  subjects,
  change,
  facts: [],
});

test('a step reads as work, with names as they are written', () => {
  expect(stepWords(step('transponder-test', ['OT 90 transponder']), {})).toBe('Transponder test of OT 90 transponder');
  expect(stepWords(step('release-entry', ['new-navigator']), {})).toBe('Entry of release of the new navigator');
  expect(stepWords(step('annual-inspection'), {})).toBe('Annual inspection');
  expect(stepWords(step('altitude-suite'), {})).toBe('All altitude and transponder tests in one visit');
  expect(stepWords(step('load-database', ['QN 52 navigator', 'navigation'], 'database.load'), {})).toBe(
    'Load the data of QN 52 navigator',
  );
  expect(stepWords(step('replace-navigator', ['QN 52 navigator', 'QN 20V navigator'], 'unit.install'), {})).toBe(
    'Fit QN 52 navigator in place of QN 20V navigator',
  );
  expect(stepWords(step('fit-elt', ['PE 406 emergency transmitter'], 'unit.install'), {})).toBe(
    'Fit PE 406 emergency transmitter',
  );
});

test('facts to find out are named', () => {
  expect(stepWords({ job: 'find-out', subjects: [], change: null, facts: ['configuration.authority'] }, {})).toMatch(
    /^Find out and record: ./,
  );
});

test('hours are a span, and assumptions are said', () => {
  expect(spanWords({ low: 0.8, typical: 1.5, high: 2 })).toBe('about 1.5 h (0.8 to 2)');
  expect(assumptionWords('turns-out-well')).toBe('the missing facts turn out well');
});

test('a job by itself hangs on no name', () => {
  expect(jobWords('load-database')).toBe('Load the data');
  expect(jobWords('approve-installation')).toBe('Have the installation approved for all it can do');
  expect(jobWords('weigh')).toBe('Weigh the aircraft, and revise the record and equipment list');
  for (const job of Object.keys(defaultLabour.jobs)) expect(jobWords(job)).toMatch(/^[A-Z0-9].*[A-Za-z)]$/);
});

test('money is whole and stands beside its word', () => {
  expect(moneyWords({ low: 80.4, typical: 1234.5, high: 2000 }, 'Kr')).toBe('Kr 1,235 (80 to 2,000)');
});
