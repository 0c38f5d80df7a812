import { describe, expect, it } from 'vitest';
import { assess } from '../assess/assess.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import type { FlightConditions, When } from './conditions.js';
import { defaultConditions, matches, strictest, widenConditions } from './conditions.js';

describe('widenConditions', () => {
  it('takes the default profile where nothing is asked, and the strictest value for a field left open', () => {
    expect(widenConditions(undefined)).toEqual(defaultConditions);
    expect(widenConditions({ light: 'day' })).toEqual({ ...strictest, light: 'day' });
  });

  it('takes a flight with an approach as IFR, one without as it is asked', () => {
    expect(widenConditions({ rules: 'vfr', approaches: ['ils'] }).rules).toBe('ifr');
    expect(widenConditions({ rules: 'vfr', approaches: [] }).rules).toBe('vfr');
  });

  it('so that what binds IFR alone cannot be passed by asking for an approach under VFR', () => {
    // 91.171 binds IFR alone: the trainer's VOR check of 1 March is good through 31 March.
    const late = { instant: '2026-04-02T16:00Z' };
    const asked = { ...defaultConditions, purpose: 'private' as const, approaches: ['vor' as const] };
    const vfr = assess(trainer(), trainerCatalogue, late, { ...asked, rules: 'vfr' }).operations['flight'];
    expect(vfr).toEqual(assess(trainer(), trainerCatalogue, late, asked).operations['flight']);
    expect(vfr?.ready).toBe('no');
    expect(assess(trainer(), trainerCatalogue, { instant: goodDay }, asked).operations['flight']?.ready).toBe('yes');
  });
});

describe('a flight matches', () => {
  const asked = (part: Partial<FlightConditions>): FlightConditions => ({ ...defaultConditions, ...part });
  it.each<[string, When, Partial<FlightConditions>, boolean]>([
    ['nothing asked', {}, {}, true],
    ['its rules', { rules: 'ifr' }, { rules: 'ifr' }, true],
    ['other rules', { rules: 'ifr' }, { rules: 'vfr' }, false],
    ['its light', { light: 'night' }, { light: 'night' }, true],
    ['other light', { light: 'night' }, { light: 'day' }, false],
    ['one of the purposes', { purpose: ['rental', 'ferry'] }, { purpose: 'ferry' }, true],
    ['none of the purposes', { purpose: ['rental', 'ferry'] }, { purpose: 'private' }, false],
    ['some of the airspace', { airspace: ['class-a', 'controlled'] }, { airspace: ['controlled'] }, true],
    ['none of the airspace', { airspace: ['class-a'] }, { airspace: ['controlled'] }, false],
    ['no airspace', { airspace: ['class-a'] }, { airspace: [] }, false],
    ['the height, on it', { topFt: 10_000 }, { topFt: 10_000 }, true],
    ['the height, below it', { topFt: 10_000 }, { topFt: 9_999 }, false],
    ['a training radius, on it', { localTrainingNm: 50 }, { localTrainingNm: 50 }, true],
    ['a training radius, beyond it', { localTrainingNm: 50 }, { localTrainingNm: 50.1 }, false],
    ['a training radius, none claimed', { localTrainingNm: 50 }, { localTrainingNm: null }, false],
    ['over water', { overWaterBeyondGlide: true }, { overWaterBeyondGlide: true }, true],
    ['over land', { overWaterBeyondGlide: true }, { overWaterBeyondGlide: false }, false],
    ['crew only', { crewOnly: true }, { crewOnly: true }, true],
    ['with passengers', { crewOnly: true }, { crewOnly: false }, false],
    ['its errand', { errand: ['design-or-test'] }, { errand: 'design-or-test' }, true],
    ['another errand', { errand: ['design-or-test'] }, { errand: 'newly-acquired' }, false],
    ['an errand, none said', { errand: ['design-or-test'] }, { errand: null }, false],
    ['no errand said', { errand: ['unsaid'] }, { errand: null }, true],
    ['no errand said, none of them meant', { errand: ['unsaid'] }, { errand: 'none-of-these' }, false],
    ['its region, whatever its capitals', { region: ['Coast', 'ISLANDS '] }, { region: 'Islands' }, true],
    ['its region, said with room around it', { region: ['Coast'] }, { region: ' coast ' }, true],
    ['another region', { region: ['Coast'] }, { region: 'Islands' }, false],
    ['a region, none said', { region: ['Coast'] }, { region: null }, false],
    ['a region said', { regionSaid: true }, { region: 'Coast' }, true],
    ['no region said', { regionSaid: true }, { region: null }, false],
    ['one key of two', { rules: 'ifr', light: 'night' }, { rules: 'ifr', light: 'day' }, false],
  ])('%s', (_, when, part, is) => {
    expect(matches(when, asked(part))).toBe(is);
  });

  it('a profile kept from before errand and region were asked says neither', () => {
    const { errand: _errand, region: _region, ...kept } = defaultConditions;
    expect(matches({ errand: ['unsaid'] }, kept as FlightConditions)).toBe(true);
    expect(matches({ regionSaid: true }, kept as FlightConditions)).toBe(false);
  });
});
