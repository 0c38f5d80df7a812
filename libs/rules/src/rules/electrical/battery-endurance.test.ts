import { circuitOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { Circuit, Electrical } from '../../dossier/installation.js';
import { batteryEndurance } from './battery-endurance.js';

const amendment62 = { code: 'part-23', amendment: 62 } as const;
const radio = (part: Partial<Circuit> = {}) =>
  circuitOf({
    id: 'c1',
    loadA: 20,
    intermittent: false,
    usedIn: ['cruise', 'battery-only'],
    essential: true,
    units: ['u1'],
    ...part,
  });
const types = [
  typeOf({ id: 'vc1', functions: ['com'], drawA: { at14V: 3, at28V: null } }),
  typeOf({ id: 'nx', functions: ['gnss'] }),
  typeOf({ id: 'wh', functions: ['lateral-deviation'], drawA: { at14V: 0, at28V: 0 } }),
];
const complete = {
  status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
} as const;
const aircraft = (
  electrical: Partial<Electrical> = {},
  basis: Aircraft['basis'] = amendment62,
  maxOperatingAltitudeFt: number | null = 25_000,
) =>
  dossierOf(complete, {
    configuration: {
      units: [unitOf({ id: 'u1', typeId: 'vc1' })],
      aircraft: { basis, maxOperatingAltitudeFt },
      electrical: {
        busV: 28,
        alternatorA: 60,
        batteryAh: 12.5,
        batteryShare: 0.8,
        loadWatch: null,
        circuits: [radio()],
        ...electrical,
      },
    },
  });

const base = { at: '2026-03-02T14:00Z', types };

// 14 CFR 23.1353(h): 30 minutes up to 25,000 ft, 60 above. 12.5 Ah, of which 80 % count, carry 20 A for 30 minutes.
testRule(batteryEndurance, [
  {
    name: '30 minutes',
    dossier: aircraft(),
    ...base,
    expect: 'met',
    message: 'lasts',
    data: { minutes: 30, asked: 30 },
  },
  {
    name: 'a little less',
    dossier: aircraft({ batteryAh: 12.45 }),
    ...base,
    expect: 'not-met',
    message: 'short',
    data: { minutes: 29.9 },
  },
  { name: 'a little more', dossier: aircraft({ batteryAh: 12.55 }), ...base, expect: 'met' },
  {
    name: 'certificated above 25,000 ft',
    dossier: aircraft({}, amendment62, 25_001),
    ...base,
    expect: 'not-met',
    data: { asked: 60 },
  },
  {
    name: 'certificated above 25,000 ft, 60 minutes',
    dossier: aircraft({ batteryAh: 25 }, amendment62, 25_001),
    ...base,
    expect: 'met',
  },
  {
    name: 'highest altitude not recorded, 60 minutes',
    dossier: aircraft({ batteryAh: 25 }, amendment62, null),
    ...base,
    expect: 'met',
  },
  {
    name: 'highest altitude not recorded, 30 minutes',
    dossier: aircraft({}, amendment62, null),
    ...base,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'amendment 61: 30 minutes at any altitude',
    dossier: aircraft({}, { code: 'part-23', amendment: 61 }, 25_001),
    ...base,
    expect: 'met',
  },
  {
    name: 'amendment 49',
    dossier: aircraft({ batteryAh: 12 }, { code: 'part-23', amendment: 49 }),
    ...base,
    expect: 'not-met',
  },
  {
    name: 'amendment 48: nothing of the kind',
    dossier: aircraft({ batteryAh: 12 }, { code: 'part-23', amendment: 48 }),
    ...base,
    expect: 'none',
  },
  {
    name: 'amendment 64: other words',
    dossier: aircraft({}, { code: 'part-23', amendment: 64 }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'amendment not recorded',
    dossier: aircraft({}, { code: 'part-23', amendment: null }),
    ...base,
    expect: 'cannot-tell',
  },
  { name: 'basis not recorded', dossier: aircraft({}, null), ...base, expect: 'cannot-tell' },
  {
    name: 'CAR 3 has none of it',
    dossier: aircraft({ batteryAh: 1 }, { code: 'car-3', amendment: null }),
    ...base,
    expect: 'none',
  },
  {
    name: 'share not recorded, enough if all of it counts',
    dossier: aircraft({ batteryShare: null }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'share not recorded, too little at best',
    dossier: aircraft({ batteryShare: null, batteryAh: 9.9 }),
    ...base,
    expect: 'not-met',
  },
  { name: 'battery not recorded', dossier: aircraft({ batteryAh: null }), ...base, expect: 'cannot-tell' },
  {
    name: 'load not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', loadA: null })] }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'load of the only circuit not recorded: its own load is asked for, not another circuit',
    dossier: aircraft({ circuits: [radio({ loadA: null })] }),
    ...base,
    expect: 'cannot-tell',
    data: { loadA: 0, minutes: null },
  },
  {
    name: 'the known loads are too much already',
    dossier: aircraft({ circuits: [radio({ loadA: 30 }), radio({ id: 'c2', loadA: null })] }),
    ...base,
    expect: 'not-met',
  },
  {
    name: 'essential counts though nobody said that it stays on',
    dossier: aircraft({ circuits: [radio({ usedIn: ['cruise'] }), radio({ id: 'c2', loadA: 1 })] }),
    ...base,
    expect: 'not-met',
    data: { loadA: 21 },
  },
  {
    name: 'not essential, but stays on',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', loadA: 1, essential: false })] }),
    ...base,
    expect: 'not-met',
  },
  {
    name: 'not essential and shed',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', essential: false, usedIn: ['cruise'] })] }),
    ...base,
    expect: 'met',
  },
  {
    name: 'whether essential not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', essential: null, usedIn: ['cruise'] })] }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'highest altitude not recorded, less than the shorter time',
    dossier: aircraft({ batteryAh: 12.45 }, amendment62, null),
    ...base,
    expect: 'not-met',
    message: 'short',
  },
  {
    name: 'not essential, and when it is on not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', essential: false, usedIn: null })] }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'whether it is intermittent not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', intermittent: null })] }),
    ...base,
    expect: 'cannot-tell',
  },
  { name: 'no circuits recorded', dossier: aircraft({ circuits: [] }), ...base, expect: 'cannot-tell' },
  {
    name: 'electrical system not recorded',
    dossier: dossierOf({ configuration: { aircraft: { basis: amendment62 } } }),
    ...base,
    expect: 'none',
  },
  // 5 Ah, of which 75 % count, carry 2 A for 112.5 minutes; nobody said that this is all there is.
  {
    name: 'one small circuit, other units on none',
    dossier: dossierOf(aircraft({ batteryAh: 5, batteryShare: 0.75, circuits: [radio({ loadA: 2 })] }), {
      configuration: { units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'u2', typeId: 'vc1' })] },
    }),
    ...base,
    expect: 'cannot-tell',
    message: 'unclear',
    data: { minutes: 112.5 },
  },
  {
    name: 'a unit on no circuit, its current not stated',
    dossier: dossierOf(aircraft(), {
      configuration: { units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'u2', typeId: 'nx' })] },
    }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit on no circuit that draws nothing by its manual',
    dossier: dossierOf(aircraft(), {
      configuration: { units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'u2', typeId: 'wh' })] },
    }),
    ...base,
    expect: 'met',
  },
  {
    name: 'list of equipment not stated complete',
    dossier: dossierOf(aircraft(), { status: { completeness: [] } }),
    ...base,
    expect: 'cannot-tell',
  },
  {
    name: 'list of equipment not stated complete, what is known too much already',
    dossier: dossierOf(aircraft({ batteryAh: 12.45 }), { status: { completeness: [] } }),
    ...base,
    expect: 'not-met',
  },
  {
    name: 'nothing stays on: what the battery carries is on no circuit',
    dossier: aircraft({ circuits: [radio({ essential: false, usedIn: ['cruise'] })] }),
    ...base,
    expect: 'cannot-tell',
  },
]);
