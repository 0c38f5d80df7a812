import type { FlightConditions } from '../src/verdict/conditions.js';
import { defaultConditions } from '../src/verdict/conditions.js';

/** Flights that the tests of the way back ask for. */
export const ifr: Partial<FlightConditions> = { ...defaultConditions, purpose: 'private' };
export const vfr: Partial<FlightConditions> = { ...ifr, rules: 'vfr', topFt: 6_000 };
export const lpv: Partial<FlightConditions> = { ...ifr, approaches: ['lpv'] };
export const ils: Partial<FlightConditions> = { ...ifr, approaches: ['ils'] };
/** Where a transponder with ADS-B Out is asked for, so that to deactivate it is no way. */
export const busy: Partial<FlightConditions> = { ...ils, airspace: ['controlled', 'class-b-c'] };
