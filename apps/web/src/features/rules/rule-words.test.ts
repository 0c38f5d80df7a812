import { describe, expect, it } from 'vitest';
import { costWords, limitsOf, messageWords } from './rule-words.js';

const cost = (part: Partial<Parameters<typeof costWords>[0][number]>) =>
  costWords([{ stops: 'capability', capability: null, ofUnit: false, kind: null, ...part }]);

describe('what a rule costs', () => {
  it.each([
    [{ capability: 'approach-lpv', ofUnit: true }, 'LPV approach, by the unit concerned'],
    [{ capability: 'fly' }, 'Fly at all'],
    [{ stops: 'release' }, 'The release'],
    [{ stops: 'nothing', kind: 'advice' }, 'Nothing: it is advice'],
    [{ stops: 'nothing', kind: 'record' }, 'Nothing: it belongs in the record'],
  ])('%j', (part, words) => {
    expect(cost(part)).toEqual([words]);
  });
});

describe('limits', () => {
  const source = { document: '14 CFR 91.171', paragraph: '(b)', edition: '2026', status: 'verified' };
  it('of one name and source stand in one line, others apart', () => {
    expect(
      limitsOf([
        { label: 'bearing-error', amount: 4, unit: 'degrees', source },
        { label: 'bearing-error', amount: 6, unit: 'degrees', source },
        { label: 'bearing-error', amount: 6, unit: 'degrees', source: { ...source, status: 'reading' } },
      ]).map(({ name, amounts }) => `${name}: ${amounts}`),
    ).toEqual(['Bearing error: 4 degrees or 6 degrees', 'Bearing error: 6 degrees']);
  });
});

it('names what a message fills in', () => {
  expect(messageWords('{item} was good until {lastGood}.')).toBe('[item] was good until [last good].');
});
