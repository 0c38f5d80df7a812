import { expect, test } from 'vitest';
import { browserWords } from './browser-words.js';
import { draftOf, factsOf } from './person-draft.js';
import type { Person } from './query.js';

const person: Person = {
  id: 'p',
  name: 'Jory Pellam',
  email: 'j@shop.example',
  role: 'TECHNICIAN',
  active: true,
  revision: 3,
  operator: null,
  certificate: { kind: 'MECHANIC', number: 'TW-M-1', ratings: ['AIRFRAME'] },
};

test('a person that nobody touched is sent as it came', () => {
  expect(factsOf(draftOf(person))).toEqual({
    name: 'Jory Pellam',
    role: 'TECHNICIAN',
    operatorId: null,
    certificate: { kind: 'MECHANIC', number: 'TW-M-1', ratings: ['AIRFRAME'] },
  });
});

test('an operator goes with a dispatcher only', () => {
  const draft = { ...draftOf(person), operatorId: 'north' };
  expect(factsOf(draft).operatorId).toBeNull();
  expect(factsOf({ ...draft, role: 'DISPATCHER' }).operatorId).toBe('north');
  expect(factsOf({ ...draft, role: 'DISPATCHER', operatorId: '' }).operatorId).toBeNull();
});

test('no certificate, an empty number and unrecorded ratings stay what they are', () => {
  const draft = draftOf(null);
  expect(factsOf(draft).certificate).toBeNull();
  expect(factsOf({ ...draft, certificate: { kind: 'PILOT', number: ' ', ratings: null } }).certificate).toEqual({
    kind: 'PILOT',
    number: null,
    ratings: null,
  });
});

test.each([
  [
    'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/150.0.0.0 Safari/537.36',
    'Chrome on Linux',
  ],
  ['Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0', 'Firefox on Windows'],
  [
    'Mozilla/5.0 (iPad; CPU OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1',
    'Safari on iPad',
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/150.0.0.0 Safari/537.36 Edg/150.0.0.0',
    'Edge on Windows',
  ],
  [
    'Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/150.0 Mobile Safari/537.36',
    'Chrome on Android',
  ],
  [
    'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) HeadlessChrome/150.0 Safari/537.36',
    'Chrome on Linux',
  ],
  ['curl/8.5.0', 'curl/8.5.0'],
  ['', 'not named'],
])('%s', (agent, words) => {
  expect(browserWords(agent)).toBe(words);
});
