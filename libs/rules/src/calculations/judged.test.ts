import { expect, test } from 'vitest';
import { held, heldInDoubt, judged, stated, worst } from './judged.js';

test('nothing read is cannot-tell, never met', () => {
  expect(judged([])).toEqual({ outcome: 'cannot-tell', points: [] });
});

test('not met outweighs cannot tell, which outweighs met', () => {
  expect(worst(['met', 'met'])).toBe('met');
  expect(worst(['met', 'cannot-tell', 'met'])).toBe('cannot-tell');
  expect(worst(['cannot-tell', 'not-met', 'met'])).toBe('not-met');
});

const source = { document: 'D', paragraph: '1', edition: 'A', status: 'verified' } as const;
const asked = { what: 'a', unit: 'ft', source };

test('in doubt which limit holds: inside the narrow one met, outside the wide one not', () => {
  const at = (value: number | null) => heldInDoubt({ ...asked, value, narrow: { most: 10 }, wide: { most: 20 } });
  expect([5, 10, 15, 20, 21, null].map((value) => at(value).outcome)).toEqual([
    'met',
    'met',
    'cannot-tell',
    'cannot-tell',
    'not-met',
    'cannot-tell',
  ]);
  expect([at(5).limit, at(21).limit, at(15).limit]).toEqual([{ most: 10 }, { most: 20 }, { most: 10 }]);
  // Nothing read is inside no limit, whatever nought would be.
  expect(heldInDoubt({ ...asked, value: null, narrow: { least: 1 }, wide: { least: -1 } }).outcome).toBe('cannot-tell');
  expect(heldInDoubt({ ...asked, value: null, narrow: { least: 2 }, wide: { least: 1 } }).outcome).toBe('cannot-tell');
});

test('a statement is held to what it must be', () => {
  const said = (value: boolean | null, is?: boolean) =>
    stated({ what: 'a', source, value, ...(is === undefined ? {} : { is }) });
  expect(
    [said(true), said(false), said(null), said(false, false), said(true, false)].map(({ outcome }) => outcome),
  ).toEqual(['met', 'not-met', 'cannot-tell', 'met', 'not-met']);
  expect(said(true, false).limit).toEqual({ is: false });
});

test('bounds hold on them, but for the one that says below; noise of a sum does not count', () => {
  const at = (value: number, limit: Parameters<typeof held>[0]['limit']) => held({ ...asked, value, limit }).outcome;
  expect([at(1, { least: 1 }), at(0.999, { least: 1 })]).toEqual(['met', 'not-met']);
  expect([at(1, { most: 1 }), at(1.001, { most: 1 })]).toEqual(['met', 'not-met']);
  expect([at(0.999, { below: 1 }), at(1, { below: 1 })]).toEqual(['met', 'not-met']);
  expect([at(0.1 + 0.2, { most: 0.3 }), at(0.30001, { most: 0.3 })]).toEqual(['met', 'not-met']);
});
