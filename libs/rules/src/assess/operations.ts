import { forHire } from '../rules/purposes.js';
import type { Capability } from '../verdict/capability.js';
import type { Airspace, Approach, FlightConditions } from '../verdict/conditions.js';
import { approaches } from '../verdict/conditions.js';

/** What a flight needs: a capability, or any of several. */
export type Need = { readonly capability: Capability } | { readonly anyOf: readonly Need[] };

const needsTransponder: readonly Airspace[] = [
  'class-a',
  'class-b-c',
  'over-class-b-c',
  'ring-30nm',
  'ring-10nm',
  'at-or-above-10000',
];
const needsAdsB: readonly Airspace[] = [
  'class-a',
  'class-b-c',
  'over-class-b-c',
  'ring-30nm',
  'at-or-above-10000',
  'gulf-3000',
];
/**
 * The fixed table of operations over capabilities. IFR: 91.205(d)(2), 91.411. Airspace: 91.215(b), 91.225(a),(b),(d);
 * two-way radio in class A, B and C: 91.135(b), 91.131(c)(2), 91.130(c).
 */
export function needsOf(flight: FlightConditions): readonly Need[] {
  const needs: Need[] = [{ capability: 'fly' }];
  if (flight.light === 'night') needs.push({ capability: 'night' });
  if (forHire.some((each) => each === flight.purpose)) needs.push({ capability: 'hire' });
  const ifr = flight.rules === 'ifr' || flight.approaches.length > 0;
  if (ifr) needs.push({ capability: 'ifr-aircraft' });
  if (ifr || flight.airspace.includes('class-b-c') || flight.airspace.includes('class-a'))
    needs.push({ capability: 'two-way-radio' });
  if (ifr) needs.push({ anyOf: [{ capability: 'nav-vor' }, { capability: 'nav-gnss' }] });
  if (flight.airspace.some((each) => needsTransponder.includes(each))) needs.push({ capability: 'altitude-reporting' });
  if (flight.airspace.some((each) => needsAdsB.includes(each))) needs.push({ capability: 'ads-b-out' });
  if (flight.approaches.length > 0)
    needs.push({ anyOf: flight.approaches.map((each) => ({ capability: `approach-${each}` as const })) });
  return needs;
}

/** Operations that every assessment answers beside the flight asked about. */
export function fixedOperations(flight: FlightConditions): Readonly<Record<string, FlightConditions>> {
  const plain = { ...flight, approaches: [] as readonly Approach[] };
  const ifr = { ...plain, rules: 'ifr' as const };
  return {
    flight: flight,
    'vfr-day': { ...plain, rules: 'vfr', light: 'day' },
    'vfr-night': { ...plain, rules: 'vfr', light: 'night' },
    ifr: ifr,
    ...Object.fromEntries(approaches.map((each) => [`approach-${each}`, { ...ifr, approaches: [each] }])),
  };
}
