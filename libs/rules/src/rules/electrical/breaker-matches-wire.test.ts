import { circuitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Circuit } from '../../dossier/installation.js';
import { breakerMatchesWire } from './breaker-matches-wire.js';

const at = '2026-03-02T14:00Z';
const circuit = (part: Partial<Circuit>) =>
  dossierOf({
    configuration: {
      electrical: {
        busV: 14,
        alternatorA: 60,
        batteryAh: 25,
        batteryShare: null,
        loadWatch: null,
        circuits: [circuitOf({ id: 'c1', ratingA: 7.5, wireAwg: 20, singleWireInOpenAir: false, ...part })],
      },
    },
  });

// AC 43.13-1B table 11-3: AWG 20 takes a breaker of 7.5 A or a fuse of 5 A, AWG 18 either of 10 A, AWG 2 a breaker of 125 A.
testRule(breakerMatchesWire, [
  { name: 'breaker of the chart', dossier: circuit({}), at, expect: 'met', message: 'guarded', data: { chartA: 7.5 } },
  { name: 'smaller breaker', dossier: circuit({ ratingA: 5 }), at, expect: 'met' },
  { name: 'a rating that the chart does not list', dossier: circuit({ ratingA: 3 }), at, expect: 'met' },
  {
    name: 'a tenth above the chart',
    dossier: circuit({ ratingA: 7.6 }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'fuse of the chart',
    dossier: circuit({ protector: 'fuse', ratingA: 5 }),
    at,
    expect: 'met',
    data: { chartA: 5 },
  },
  {
    name: 'fuse above the chart, though a breaker might serve',
    dossier: circuit({ protector: 'fuse', ratingA: 7.5 }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'one size up, single wire in open air',
    dossier: circuit({ ratingA: 10, singleWireInOpenAir: true }),
    at,
    expect: 'met',
  },
  { name: 'one size up, in a bundle', dossier: circuit({ ratingA: 10 }), at, expect: 'cannot-tell' },
  {
    name: 'one size up, not recorded how it runs',
    dossier: circuit({ ratingA: 10, singleWireInOpenAir: null }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'two sizes up, single wire in open air',
    dossier: circuit({ ratingA: 15, singleWireInOpenAir: true }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'one size up is for breakers',
    dossier: circuit({ protector: 'fuse', ratingA: 7.5, singleWireInOpenAir: true }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'no larger breaker in the chart',
    dossier: circuit({ wireAwg: 2, ratingA: 150, singleWireInOpenAir: true }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'the chart lists no breaker for the gauge',
    dossier: circuit({ wireAwg: 0, ratingA: 100 }),
    at,
    expect: 'cannot-tell',
  },
  // Table 11-3 ends at 0.
  { name: 'a gauge thicker than the chart', dossier: circuit({ wireAwg: -1, ratingA: 1 }), at, expect: 'cannot-tell' },
  { name: 'a gauge thinner than the chart', dossier: circuit({ wireAwg: 24, ratingA: 1 }), at, expect: 'cannot-tell' },
  { name: 'a gauge that is in no table', dossier: circuit({ wireAwg: 21 }), at, expect: 'cannot-tell' },
  { name: 'rating not recorded', dossier: circuit({ ratingA: null }), at, expect: 'cannot-tell' },
  { name: 'gauge not recorded', dossier: circuit({ wireAwg: null }), at, expect: 'cannot-tell' },
  {
    name: 'no protector: an exception of 23.1357(a)?',
    dossier: circuit({ protector: 'none', ratingA: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'electrical system not recorded', dossier: dossierOf(), at, expect: 'none' },
]);
