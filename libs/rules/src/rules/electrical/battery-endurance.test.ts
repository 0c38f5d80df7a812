import { circuitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { Circuit, Electrical } from '../../dossier/installation.js';
import { batteryEndurance } from './battery-endurance.js';

const at = '2026-03-02T14:00Z';
const amendment62 = { code: 'part-23', amendment: 62 } as const;
const radio = (part: Partial<Circuit> = {}) =>
  circuitOf({ id: 'c1', loadA: 20, intermittent: false, usedIn: ['cruise', 'battery-only'], essential: true, ...part });
const aircraft = (
  electrical: Partial<Electrical> = {},
  basis: Aircraft['basis'] = amendment62,
  maxOperatingAltitudeFt: number | null = 25_000,
) =>
  dossierOf({
    configuration: {
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

// 14 CFR 23.1353(h): 30 minutes up to 25,000 ft, 60 above. 12.5 Ah, of which 80 % count, carry 20 A for 30 minutes.
testRule(batteryEndurance, [
  { name: '30 minutes', dossier: aircraft(), at, expect: 'met', message: 'lasts', data: { minutes: 30, asked: 30 } },
  {
    name: 'a little less',
    dossier: aircraft({ batteryAh: 12.45 }),
    at,
    expect: 'not-met',
    message: 'short',
    data: { minutes: 29.9 },
  },
  { name: 'a little more', dossier: aircraft({ batteryAh: 12.55 }), at, expect: 'met' },
  {
    name: 'certificated above 25,000 ft',
    dossier: aircraft({}, amendment62, 25_001),
    at,
    expect: 'not-met',
    data: { asked: 60 },
  },
  {
    name: 'certificated above 25,000 ft, 60 minutes',
    dossier: aircraft({ batteryAh: 25 }, amendment62, 25_001),
    at,
    expect: 'met',
  },
  {
    name: 'highest altitude not recorded, 60 minutes',
    dossier: aircraft({ batteryAh: 25 }, amendment62, null),
    at,
    expect: 'met',
  },
  {
    name: 'highest altitude not recorded, 30 minutes',
    dossier: aircraft({}, amendment62, null),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'amendment 61: 30 minutes at any altitude',
    dossier: aircraft({}, { code: 'part-23', amendment: 61 }, 25_001),
    at,
    expect: 'met',
  },
  {
    name: 'amendment 49',
    dossier: aircraft({ batteryAh: 12 }, { code: 'part-23', amendment: 49 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'amendment 48: nothing of the kind',
    dossier: aircraft({ batteryAh: 12 }, { code: 'part-23', amendment: 48 }),
    at,
    expect: 'none',
  },
  {
    name: 'amendment 64: other words',
    dossier: aircraft({}, { code: 'part-23', amendment: 64 }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'amendment not recorded',
    dossier: aircraft({}, { code: 'part-23', amendment: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'basis not recorded', dossier: aircraft({}, null), at, expect: 'cannot-tell' },
  {
    name: 'CAR 3 has none of it',
    dossier: aircraft({ batteryAh: 1 }, { code: 'car-3', amendment: null }),
    at,
    expect: 'none',
  },
  {
    name: 'share not recorded, enough if all of it counts',
    dossier: aircraft({ batteryShare: null }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'share not recorded, too little at best',
    dossier: aircraft({ batteryShare: null, batteryAh: 9.9 }),
    at,
    expect: 'not-met',
  },
  { name: 'battery not recorded', dossier: aircraft({ batteryAh: null }), at, expect: 'cannot-tell' },
  {
    name: 'load not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', loadA: null })] }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'the known loads are too much already',
    dossier: aircraft({ circuits: [radio({ loadA: 30 }), radio({ id: 'c2', loadA: null })] }),
    at,
    expect: 'not-met',
  },
  {
    name: 'essential counts though nobody said that it stays on',
    dossier: aircraft({ circuits: [radio({ usedIn: ['cruise'] }), radio({ id: 'c2', loadA: 1 })] }),
    at,
    expect: 'not-met',
    data: { loadA: 21 },
  },
  {
    name: 'not essential, but stays on',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', loadA: 1, essential: false })] }),
    at,
    expect: 'not-met',
  },
  {
    name: 'not essential and shed',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', essential: false, usedIn: ['cruise'] })] }),
    at,
    expect: 'met',
  },
  {
    name: 'whether essential not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', essential: null, usedIn: ['cruise'] })] }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'highest altitude not recorded, less than the shorter time',
    dossier: aircraft({ batteryAh: 12.45 }, amendment62, null),
    at,
    expect: 'not-met',
    message: 'short',
  },
  {
    name: 'not essential, and when it is on not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', essential: false, usedIn: null })] }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'whether it is intermittent not recorded',
    dossier: aircraft({ circuits: [radio(), radio({ id: 'c2', intermittent: null })] }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'no circuits recorded', dossier: aircraft({ circuits: [] }), at, expect: 'cannot-tell' },
  {
    name: 'electrical system not recorded',
    dossier: dossierOf({ configuration: { aircraft: { basis: amendment62 } } }),
    at,
    expect: 'none',
  },
]);
