import { expect, test } from 'vitest';
import { dueWords, subjectWords, oldReadingWords } from './words.js';

test('names stay as they are written, codes become words', () => {
  expect(subjectWords({ subjectName: 'QN 52 navigator:approach-lpv' })).toBe('QN 52 navigator, LPV approach');
  expect(subjectWords({ subjectName: 'compass-swing:aircraft' })).toBe('Compass swing, Aircraft');
});

test('a due item says what it is of, unless that is the aircraft or itself', () => {
  const item = { what: 'transponder-test', subject: 'xpdr1', subjectName: 'OT 90 transponder' };
  expect(dueWords(item)).toBe('Transponder test, OT 90 transponder');
  expect(dueWords({ ...item, what: 'annual-inspection', subject: 'aircraft', subjectName: 'aircraft' })).toBe(
    'Annual inspection',
  );
  expect(dueWords({ what: 'TW-21-08', subject: 'ad-1', subjectName: 'TW-21-08' })).toBe('TW-21-08');
});

test('hours are marked from the minute in which their reading is too old', () => {
  const item = { readingEnds: '2026-11-25T12:00Z' };
  expect(oldReadingWords(item, '2026-11-25T11:59Z')).toBe('');
  expect(oldReadingWords(item, '2026-11-25T12:00Z')).toBe(', by a reading that is too old');
  expect(oldReadingWords({ readingEnds: null }, '2026-11-25T12:00Z')).toBe('');
});
