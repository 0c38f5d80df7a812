import { airspaces, approaches, errands, purposes, type FlightConditions } from '@tallywing/rules';
import { expect, test } from 'vitest';
import {
  airspaceOptions,
  approachOptions,
  draftOf,
  errandOptions,
  flightWords,
  inputOf,
  moved,
  numberProblem,
  purposeOptions,
} from './profile-draft.js';

const flight: FlightConditions = {
  rules: 'ifr',
  light: 'day',
  purpose: 'training-provided',
  airspace: ['controlled', 'class-b-c'],
  topFt: 10_000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: ['lpv', 'lnav-vnav'],
};
const profile = { id: 'p', name: 'IFR lesson', wanted: true, conditions: flight, revision: 1 };

test('every purpose, airspace and approach of the rules can be chosen', () => {
  expect(purposeOptions.map(({ id }) => id)).toEqual(purposes);
  expect(errandOptions.map(({ id }) => id)).toEqual(['', ...errands]);
  expect(airspaceOptions.map(({ id }) => id)).toEqual(airspaces);
  expect(approachOptions.map(({ id }) => id)).toEqual(approaches);
});

test('a profile that nobody touched is sent as it came, in the spelling of the API', () => {
  expect(inputOf(draftOf(profile))).toEqual({
    name: 'IFR lesson',
    wanted: true,
    conditions: {
      ...flight,
      rules: 'IFR',
      light: 'DAY',
      purpose: 'TRAINING_PROVIDED',
      airspace: ['CONTROLLED', 'CLASS_B_C'],
      approaches: ['LPV', 'LNAV_VNAV'],
    },
  });
});

test('errand and region: sent where said, nothing where not', () => {
  const said = draftOf({ ...profile, conditions: { ...flight, errand: 'design-or-test', region: 'Islands' } });
  expect(inputOf(said)?.conditions).toMatchObject({ errand: 'DESIGN_OR_TEST', region: 'Islands' });
  expect(inputOf({ ...said, errand: '', region: '  ' })?.conditions).toMatchObject({ errand: null, region: null });
});

test('numbers are read as people write them, and nothing is sent while one is wrong', () => {
  const draft = draftOf(profile);
  expect(inputOf({ ...draft, topFt: '12,500' })?.conditions.topFt).toBe(12_500);
  expect(inputOf({ ...draft, localTrainingNm: '25' })?.conditions.localTrainingNm).toBe(25);
  expect(inputOf({ ...draft, topFt: 'high' })).toBeNull();
  expect(numberProblem({ ...draft, topFt: '' }, 'topFt')).toMatch(/whole feet/);
  expect(numberProblem({ ...draft, localTrainingNm: '' }, 'localTrainingNm')).toBeNull();
  expect(numberProblem({ ...draft, localTrainingNm: '2.5' }, 'localTrainingNm')).toMatch(/whole miles/);
});

test('a flight in words', () => {
  expect(flightWords(flight)).toBe(
    'IFR by day, training provided, to 10,000 ft, controlled airspace, class B or C; LNAV/VNAV or LPV approach',
  );
  expect(
    flightWords({ ...flight, rules: 'vfr', airspace: [], approaches: [], localTrainingNm: 25, crewOnly: true }),
  ).toBe('VFR by day, training provided, to 10,000 ft, local training within 25 NM, crew only');
  expect(flightWords({ ...flight, airspace: [], approaches: [], errand: 'newly-acquired', region: 'Islands' })).toBe(
    'IFR by day, training provided, to 10,000 ft, ferry of a newly acquired airplane to where its transmitter is fitted, within Islands',
  );
  expect(flightWords({ ...flight, airspace: [], approaches: [], errand: 'none-of-these' })).toBe(
    'IFR by day, training provided, to 10,000 ft',
  );
});

test('moving stops at both ends', () => {
  expect(moved(['a', 'b', 'c'], 'b', -1)).toEqual(['b', 'a', 'c']);
  expect(moved(['a', 'b', 'c'], 'b', 1)).toEqual(['a', 'c', 'b']);
  expect(moved(['a', 'b'], 'a', -1)).toEqual(['a', 'b']);
  expect(moved(['a', 'b'], 'b', 1)).toEqual(['a', 'b']);
  expect(moved(['a', 'b'], 'x', 1)).toEqual(['a', 'b']);
});
