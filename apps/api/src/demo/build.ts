import type { ChangeOf, EquipmentType } from '@tallywing/rules';
import type { AirframeKey } from './airframes.js';
import { airframes } from './airframes.js';
import { demoTypes } from './catalogue/all.js';
import type { Fitted, Panel } from './panels.js';

/** How the demo's aircraft are built: mounts, cooling air, antenna places, circuits and loading envelopes. All figures are invented. */

type Unit = ChangeOf<'unit.install'>['unit'];
type AsBuilt = NonNullable<Unit['asBuilt']>;
type Electrical = ChangeOf<'electrical.set'>['electrical'];
type Circuit = Electrical['circuits'][number];
type Mass = ChangeOf<'mass.revise'>['mass'];
type AntennaKind = ChangeOf<'antenna.fit'>['antenna']['kind'];

export function asBuiltOf(type: EquipmentType, fitted: Fitted, date: string): AsBuilt {
  const massLb = type.massLb ?? 1;
  const lights: Readonly<Partial<Record<Fitted['type'], AsBuilt['lights']>>> = {
    annunciator: [
      { use: 'warning', colour: 'red' },
      { use: 'safe-operation', colour: 'green' },
    ],
    selector: [{ use: 'other', colour: 'white' }],
  };
  return {
    air: type.cooling?.by === 'outside-air' ? 'blower' : 'none',
    airwaysClear: true,
    couldStrike: fitted.place === 'remote',
    bears: {
      forwardLb: Math.ceil(massLb * 20),
      upLb: Math.ceil(massLb * 4),
      sideLb: Math.ceil(massLb * 5),
      downLb: Math.ceil(massLb * 10),
      document: { title: `Mount of ${type.name}, static test`, revision: 'A', date },
    },
    lights: lights[fitted.type] ?? [],
  };
}

/** Inches aft of the datum and right of the centre line. */
export const placeOfAntenna: Readonly<Record<AntennaKind, { xIn: number | null; yIn: number | null }>> = {
  com: { xIn: 104, yIn: 0 },
  'vor-loc': { xIn: 232, yIn: 0 },
  'glide-slope': { xIn: 34, yIn: 0 },
  gnss: { xIn: 58, yIn: -6 },
  'gnss-sbas': { xIn: 58, yIn: 6 },
  transponder: { xIn: 92, yIn: -8 },
  uat: { xIn: 118, yIn: 8 },
  marker: { xIn: 150, yIn: 0 },
  elt: { xIn: 190, yIn: -6 },
  combined: { xIn: null, yIn: null },
};

export function electricalOf(panel: Panel): Electrical {
  const powered = panel.units.filter(({ type }) => demoTypes[type].drawA?.at14V !== 0);
  return {
    busV: 14,
    alternatorA: 60,
    batteryAh: 30,
    batteryShare: 0.75,
    loadWatch: 'none',
    circuits: [...powered.map(circuitOf), ...lamps],
  };
}

function circuitOf({ id, type }: Fitted): Circuit {
  const loadA = demoTypes[type].drawA?.at14V ?? 1;
  const heavy = loadA > 3;
  const essential = type === 'com' || type.startsWith('nav');
  return {
    ...copper,
    id: `cb-${id}`,
    name: demoTypes[type].name,
    ratingA: heavy ? 7.5 : 5,
    wireAwg: heavy ? 18 : 20,
    wireLengthFt: 9,
    loadA,
    intermittent: false,
    usedIn: ['ground', 'taxi', 'take-off', 'cruise', 'landing', ...(essential ? (['battery-only'] as const) : [])],
    units: [id],
    essential,
  };
}

const copper = {
  protector: 'breaker',
  wireRating: 'c150',
  ampacity: { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null },
  singleWireInOpenAir: false,
  circuitsGuarded: 1,
} as const;

const lamps: readonly Circuit[] = [
  {
    ...copper,
    id: 'cb-landing-light',
    name: 'Landing light',
    ratingA: 10,
    wireAwg: 14,
    wireLengthFt: 16,
    loadA: 6,
    intermittent: false,
    usedIn: ['take-off', 'landing'],
    units: [],
    essential: false,
  },
  {
    ...copper,
    id: 'cb-position-lights',
    name: 'Position lights and beacon',
    ratingA: 10,
    wireAwg: 14,
    wireLengthFt: 18,
    loadA: 5.5,
    intermittent: false,
    usedIn: ['taxi', 'take-off', 'cruise', 'landing'],
    units: [],
    essential: false,
  },
];

export function envelopeOf(airframe: AirframeKey): NonNullable<Mass['envelope']> {
  const { maxWeightLb, seats } = airframes[airframe];
  const twin = airframe === 'twin';
  const aftIn = twin ? 49.5 : 47.3;
  return {
    points: [
      { weightLb: Math.round(maxWeightLb * 0.6), forwardIn: 35, aftIn },
      { weightLb: Math.round(maxWeightLb * 0.8), forwardIn: 35, aftIn },
      { weightLb: maxWeightLb, forwardIn: seats > 2 ? 37.5 : 36, aftIn },
    ],
    stations: [
      { name: 'Oil', armIn: -14, leastLb: twin ? 30 : 15, mostLb: twin ? 30 : 15 },
      { name: 'Front seats', armIn: 37, leastLb: 170, mostLb: 340 },
      { name: 'Fuel', armIn: 48, leastLb: twin ? 120 : 60, mostLb: twin ? 600 : 240 },
      ...(seats > 2 ? [{ name: 'Rear seats', armIn: 73, leastLb: 0, mostLb: 170 * (seats - 2) }] : []),
      { name: 'Baggage', armIn: seats > 2 ? 95 : 64, leastLb: 0, mostLb: 100 },
    ],
    leadingEdgeIn: 26.1,
    document: { title: 'Flight manual, weight and balance', revision: '4', date: null },
  };
}
