import { expect, test } from 'vitest';
import { judged, worst } from './judged.js';

test('nothing read is cannot-tell, never met', () => {
  expect(judged([])).toEqual({ outcome: 'cannot-tell', points: [] });
});

test('not met outweighs cannot tell, which outweighs met', () => {
  expect(worst(['met', 'met'])).toBe('met');
  expect(worst(['met', 'cannot-tell', 'met'])).toBe('cannot-tell');
  expect(worst(['cannot-tell', 'not-met', 'met'])).toBe('not-met');
});
