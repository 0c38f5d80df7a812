import { circuitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Circuit } from '../../dossier/installation.js';
import { voltageDrop } from './voltage-drop.js';

const at = '2026-03-02T14:00Z';
const circuit = (part: Partial<Circuit>, busV: number | null = 28) =>
  dossierOf({
    configuration: {
      electrical: {
        busV,
        alternatorA: 60,
        batteryAh: 25,
        batteryShare: null,
        loadWatch: null,
        circuits: [
          circuitOf({
            id: 'c1',
            wireAwg: 10,
            wireLengthFt: 20,
            wireRating: 'c105',
            loadA: 20,
            intermittent: false,
            ...part,
          }),
        ],
      },
    },
  });

// Table 11-6: 1 V continuous at 28 V, 0.5 V at 14 V; intermittent twice that. AWG 10 has 1.26 ohm a 1,000 ft at 20 C: 20 A lose 1 V over
// 39.68 ft, and at 105 C (234.5 + 105) / 254.5 = 1.334 times as much, 1 V over 29.74 ft.
testRule(voltageDrop, [
  {
    name: 'within the limit when hot',
    dossier: circuit({ wireLengthFt: 29.74 }),
    at,
    expect: 'met',
    message: 'within',
    data: { mostV: 1 },
  },
  {
    name: 'beyond it when hot, within when cold',
    dossier: circuit({ wireLengthFt: 29.76 }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'within it at 20 C', dossier: circuit({ wireLengthFt: 39.68 }), at, expect: 'cannot-tell' },
  {
    name: 'exactly at it at 20 C: no thicker wire is asked for',
    dossier: circuit({ wireLengthFt: 39.683 }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
    data: { dropV: 1, copper: null, aluminium: null },
  },
  {
    name: 'beyond it at 20 C',
    dossier: circuit({ wireLengthFt: 39.7 }),
    at,
    expect: 'not-met',
    message: 'over',
    data: { dropV: 1.0004, copper: 'copper No. 8', aluminium: 'aluminium No. 6' },
  },
  { name: 'example 1: 50 ft of AWG 10 lose too much', dossier: circuit({ wireLengthFt: 50 }), at, expect: 'not-met' },
  {
    name: 'a wire so long that copper does it and aluminium no more',
    dossier: circuit({ wireLengthFt: 600 }),
    at,
    expect: 'not-met',
    data: { copper: 'copper No. 0000', aluminium: 'aluminium thicker than the table has' },
  },
  {
    name: 'a thick one for each, in the way the trade writes it',
    dossier: circuit({ wireLengthFt: 240, wireRating: null }),
    at,
    expect: 'not-met',
    data: { copper: 'copper No. 0', aluminium: 'aluminium No. 000' },
  },
  {
    name: 'a wire so long that no gauge does it',
    dossier: circuit({ wireLengthFt: 2000 }),
    at,
    expect: 'not-met',
    data: { copper: 'copper thicker than the table has', aluminium: 'aluminium thicker than the table has' },
  },
  {
    name: 'example 1: AWG 8 serves at its rating of 105 C',
    dossier: circuit({ wireLengthFt: 50, wireAwg: 8 }),
    at,
    expect: 'met',
  },
  {
    name: 'intermittent: twice as much',
    dossier: circuit({ wireLengthFt: 59.4, intermittent: true }),
    at,
    expect: 'met',
    data: { mostV: 2 },
  },
  {
    name: 'intermittent: beyond that',
    dossier: circuit({ wireLengthFt: 79.4, intermittent: true }),
    at,
    expect: 'not-met',
  },
  {
    name: 'not recorded whether intermittent, within the tighter limit',
    dossier: circuit({ intermittent: null }),
    at,
    expect: 'met',
  },
  {
    name: 'not recorded whether intermittent, between the limits',
    dossier: circuit({ intermittent: null, wireLengthFt: 45 }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'not recorded whether intermittent, beyond both',
    dossier: circuit({ intermittent: null, wireLengthFt: 79.4 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'rating of the wire not recorded, within at 20 C',
    dossier: circuit({ wireRating: null }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'rating of the wire not recorded, beyond at 20 C',
    dossier: circuit({ wireRating: null, wireLengthFt: 40 }),
    at,
    expect: 'not-met',
  },
  { name: '14 V: half of it', dossier: circuit({ wireLengthFt: 14.8 }, 14), at, expect: 'met', data: { mostV: 0.5 } },
  { name: '12 V battery: beyond half of it', dossier: circuit({ wireLengthFt: 19.9 }, 12), at, expect: 'not-met' },
  { name: '115 V', dossier: circuit({ wireLengthFt: 100 }, 115), at, expect: 'met', data: { mostV: 4 } },
  { name: 'a bus of which the table does not speak', dossier: circuit({}, 48), at, expect: 'cannot-tell' },
  { name: 'bus voltage not recorded', dossier: circuit({}, null), at, expect: 'cannot-tell' },
  { name: 'length not recorded', dossier: circuit({ wireLengthFt: null }), at, expect: 'cannot-tell' },
  { name: 'a length that no aircraft has', dossier: circuit({ wireLengthFt: 2_000_000 }), at, expect: 'cannot-tell' },
  { name: 'gauge not recorded', dossier: circuit({ wireAwg: null }), at, expect: 'cannot-tell' },
  { name: 'load not recorded', dossier: circuit({ loadA: null }), at, expect: 'cannot-tell' },
  { name: 'electrical system not recorded', dossier: dossierOf(), at, expect: 'none' },
  { name: '15 V: as 14', dossier: circuit({ wireLengthFt: 14.8 }, 15), at, expect: 'met', data: { mostV: 0.5 } },
  { name: '15.1 V: no system of the table', dossier: circuit({ wireLengthFt: 14.8 }, 15.1), at, expect: 'cannot-tell' },
  { name: '11.9 V: no system of the table', dossier: circuit({ wireLengthFt: 14.8 }, 11.9), at, expect: 'cannot-tell' },
  { name: '23.9 V: no system of the table', dossier: circuit({ wireLengthFt: 14.8 }, 23.9), at, expect: 'cannot-tell' },
  { name: '24 V battery: as 28', dossier: circuit({ wireLengthFt: 29.74 }, 24), at, expect: 'met', data: { mostV: 1 } },
  { name: '29 V: as 28', dossier: circuit({ wireLengthFt: 29.74 }, 29), at, expect: 'met', data: { mostV: 1 } },
  {
    name: '29.1 V: no system of the table',
    dossier: circuit({ wireLengthFt: 29.74 }, 29.1),
    at,
    expect: 'cannot-tell',
  },
]);
