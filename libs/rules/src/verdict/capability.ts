import type { Approach } from './conditions.js';

export type Capability =
  | 'fly'
  | 'night'
  | 'hire'
  | 'ifr-aircraft'
  | 'two-way-radio'
  | 'nav-vor'
  | 'nav-gnss'
  | 'altitude-reporting'
  | 'ads-b-out'
  | `approach-${Approach}`;

/** Of the aircraft as a whole: every result on it must be met. */
export const aircraftCapabilities = ['fly', 'night', 'hire', 'ifr-aircraft'] as const satisfies readonly Capability[];

/** By at least one means: a chain of installed units and links. */
export const meansCapabilities = [
  'two-way-radio',
  'nav-vor',
  'nav-gnss',
  'altitude-reporting',
  'ads-b-out',
  'approach-vor',
  'approach-loc',
  'approach-ils',
  'approach-lnav',
  'approach-lp',
  'approach-lnav-vnav',
  'approach-lpv',
] as const satisfies readonly Capability[];

/** What satellite navigation gives. */
export const gnssCapabilities = [
  'nav-gnss',
  'approach-lnav',
  'approach-lp',
  'approach-lnav-vnav',
  'approach-lpv',
] as const satisfies readonly Capability[];
export type GnssCapability = (typeof gnssCapabilities)[number];

const byGnss = new Set<Capability>(gnssCapabilities);
export function isGnss(capability: Capability): boolean {
  return byGnss.has(capability);
}

export const capabilities: readonly Capability[] = [...aircraftCapabilities, ...meansCapabilities];

const byMeans = new Set<Capability>(meansCapabilities);
export function needsMeans(capability: Capability): boolean {
  return byMeans.has(capability);
}
