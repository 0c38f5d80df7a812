import { expect, it } from 'vitest';
import { capabilities } from '../verdict/capability.js';
import { capabilityWords, codeWords, idWords, isCapability, lowerFirst, upperFirst } from './codes.js';

it('a code is words of itself, with the initials of the trade in capitals', () => {
  expect(idWords('STOPS_AIRCRAFT')).toBe('Stops aircraft');
  expect(idWords('-a--b_')).toBe('A b');
  expect(codeWords('elt-inspection')).toBe('ELT inspection');
  expect(codeWords('ads-b-identity')).toBe('ADS-B identity');
  expect(codeWords('gnss-lnav-vnav')).toBe('GNSS LNAV VNAV');
  expect(codeWords('loads-bus')).toBe('Loads bus');
});

it('every capability has words of its own, and nothing else has them', () => {
  for (const each of capabilities) {
    expect(isCapability(each)).toBe(true);
    expect(capabilityWords(each)).toMatch(/^[A-Z]/);
  }
  expect(new Set(capabilities.map(capabilityWords)).size).toBe(capabilities.length);
  expect(capabilityWords('approach-lnav-vnav')).toBe('LNAV/VNAV approach');
  expect([isCapability('toString'), isCapability('vor-check')]).toEqual([false, false]);
  expect(capabilityWords('vor-check')).toBe('VOR check');
});

it('an entry is named as the trade names it', () => {
  expect(codeWords('hundred-hour-inspection')).toBe('100-hour inspection');
  expect(codeWords('vor-check')).toBe('VOR check');
});

it('a word begins small within a sentence unless it is initials', () => {
  expect(['Annual inspection', 'ELT battery', 'VOR Check', '100-hour'].map(lowerFirst)).toEqual([
    'annual inspection',
    'ELT battery',
    'VOR Check',
    '100-hour',
  ]);
  expect([upperFirst('annual inspection'), upperFirst('')]).toEqual(['Annual inspection', '']);
});
