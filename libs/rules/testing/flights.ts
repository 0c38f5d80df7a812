import type { FlightConditions } from '../src/verdict/conditions.js';

/** Flights that the tests of the way back ask for. */
export const ifr: Partial<FlightConditions> = {
  rules: 'ifr',
  light: 'day',
  purpose: 'private',
  airspace: ['controlled'],
  topFt: 9_000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};
export const vfr: Partial<FlightConditions> = { ...ifr, rules: 'vfr', topFt: 6_000 };
export const lpv: Partial<FlightConditions> = { ...ifr, approaches: ['lpv'] };
export const ils: Partial<FlightConditions> = { ...ifr, approaches: ['ils'] };
/** Where a transponder with ADS-B Out is asked for, so that to deactivate it is no way. */
export const busy: Partial<FlightConditions> = { ...ils, airspace: ['controlled', 'class-b-c'] };
