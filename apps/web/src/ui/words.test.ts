import { expect, test } from 'vitest';
import { countWords, hoursWords, listWords } from './words.js';

test('hours keep the hundredth only where there is one', () => {
  expect(hoursWords(1240)).toBe('12.4 h');
  expect(hoursWords(1245)).toBe('12.45 h');
  expect(hoursWords(0)).toBe('0.0 h');
  expect(hoursWords(-130)).toBe('-1.3 h');
});

test('lists and counts read as a sentence does', () => {
  expect(listWords([])).toBe('');
  expect(listWords(['a'])).toBe('a');
  expect(listWords(['a', 'b', 'c'])).toBe('a, b and c');
  expect(listWords(['a', 'b'], 'or')).toBe('a or b');
  expect(countWords(1, 'finding')).toBe('1 finding');
  expect(countWords(0, 'finding')).toBe('0 findings');
  expect(countWords(2, 'entry', 'entries')).toBe('2 entries');
});
