import { circuitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Circuit } from '../../dossier/installation.js';
import { wireCurrent } from './wire-current.js';

const at = '2026-03-02T14:00Z';
const table = { by: 'table', freeAirA: null, bundleFactor: null, altitudeFactor: null } as const;
const curves = { by: 'curves', freeAirA: 47, bundleFactor: 0.6, altitudeFactor: 0.91 } as const;
const circuit = (part: Partial<Circuit>) =>
  dossierOf({
    configuration: {
      electrical: {
        busV: 28,
        alternatorA: 60,
        batteryAh: 25,
        batteryShare: null,
        loadWatch: null,
        circuits: [circuitOf({ id: 'c1', wireAwg: 14, wireRating: 'c150', ampacity: table, loadA: 14, ...part })],
      },
    },
  });

// Table 11-9: AWG 14 carries 10 A at 105 C, 14 A at 150 C, 18 A at 200 C. Example 2 of 11-66: 47 A by 0.91 by 0.6 is 25.66 A.
testRule(wireCurrent, [
  { name: 'all that the table gives', dossier: circuit({}), at, expect: 'met', message: 'carries', data: { mayA: 14 } },
  { name: 'a hundredth more', dossier: circuit({ loadA: 14.01 }), at, expect: 'not-met', message: 'overloaded' },
  { name: 'a hundredth less', dossier: circuit({ loadA: 13.99 }), at, expect: 'met' },
  {
    name: 'the same load on a wire for 105 C',
    dossier: circuit({ wireRating: 'c105' }),
    at,
    expect: 'not-met',
    data: { mayA: 10 },
  },
  { name: '18 A on a wire for 200 C', dossier: circuit({ wireRating: 'c200', loadA: 18 }), at, expect: 'met' },
  {
    name: 'by the factors of example 2',
    dossier: circuit({ ampacity: curves, loadA: 25.66 }),
    at,
    expect: 'met',
    data: { mayA: 25.66 },
  },
  {
    name: 'a hundredth more than the factors give',
    dossier: circuit({ ampacity: curves, loadA: 25.67 }),
    at,
    expect: 'not-met',
  },
  {
    name: 'bundle factor not recorded',
    dossier: circuit({ ampacity: { ...curves, bundleFactor: null } }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'altitude factor not recorded',
    dossier: circuit({ ampacity: { ...curves, altitudeFactor: null } }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'free-air current not recorded',
    dossier: circuit({ ampacity: { ...curves, freeAirA: null } }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'nobody said that the note of the table fits',
    dossier: circuit({ ampacity: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'rating of the wire not recorded', dossier: circuit({ wireRating: null }), at, expect: 'cannot-tell' },
  // Table 11-9: 00 carries 222 A at 150 C, 0000 310 A.
  { name: '2/0 at its current', dossier: circuit({ wireAwg: -1, loadA: 222 }), at, expect: 'met' },
  { name: '2/0 above its current', dossier: circuit({ wireAwg: -1, loadA: 222.1 }), at, expect: 'not-met' },
  { name: '4/0 at its current', dossier: circuit({ wireAwg: -3, loadA: 310 }), at, expect: 'met' },
  { name: '4/0 above its current', dossier: circuit({ wireAwg: -3, loadA: 310.1 }), at, expect: 'not-met' },
  { name: 'gauge not recorded', dossier: circuit({ wireAwg: null }), at, expect: 'cannot-tell' },
  { name: 'a gauge that is in no table', dossier: circuit({ wireAwg: 13 }), at, expect: 'cannot-tell' },
  { name: 'load not recorded', dossier: circuit({ loadA: null }), at, expect: 'cannot-tell' },
  {
    name: 'by curves, load not recorded',
    dossier: circuit({ ampacity: curves, loadA: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'nothing looked at', dossier: circuit({ loadA: null, ampacity: null }), at, expect: 'cannot-tell' },
  { name: 'electrical system not recorded', dossier: dossierOf(), at, expect: 'none' },
]);
