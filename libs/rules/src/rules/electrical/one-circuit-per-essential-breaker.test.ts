import { circuitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Aircraft } from '../../dossier/aircraft.js';
import type { Circuit } from '../../dossier/installation.js';
import { oneCircuitPerEssentialBreaker } from './one-circuit-per-essential-breaker.js';

const at = '2026-03-02T14:00Z';
const part23 = { code: 'part-23', amendment: 45 } as const;
const circuit = (part: Partial<Circuit>, basis: Aircraft['basis'] = part23) =>
  dossierOf({
    configuration: {
      aircraft: { basis },
      electrical: {
        busV: 14,
        alternatorA: 60,
        batteryAh: 25,
        batteryShare: null,
        loadWatch: null,
        circuits: [circuitOf({ id: 'c1', essential: true, circuitsGuarded: 1, ...part })],
      },
    },
  });

const part27 = (amendment: number | null) => ({ code: 'part-27' as const, amendment });

// 14 CFR 23.1357(b), as it stood before amendment 23-64; 27.1357(b), as it stands since amendment 27-13 (42 FR 36972).
testRule(oneCircuitPerEssentialBreaker, [
  { name: 'one circuit', dossier: circuit({}), at, expect: 'met', message: 'alone' },
  {
    name: 'two circuits',
    dossier: circuit({ circuitsGuarded: 2 }),
    at,
    expect: 'not-met',
    message: 'shared',
    data: { guarded: 2 },
  },
  {
    name: 'how many, nobody recorded',
    dossier: circuit({ circuitsGuarded: null }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'not essential',
    dossier: circuit({ essential: false, circuitsGuarded: 3 }),
    at,
    expect: 'not-applicable',
    message: 'not-essential',
  },
  { name: 'essential or not, nobody recorded, one circuit', dossier: circuit({ essential: null }), at, expect: 'met' },
  {
    name: 'essential or not, nobody recorded, two circuits',
    dossier: circuit({ essential: null, circuitsGuarded: 2 }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'first amendment', dossier: circuit({}, { code: 'part-23', amendment: 0 }), at, expect: 'met' },
  {
    name: 'last amendment before the part was rewritten',
    dossier: circuit({}, { code: 'part-23', amendment: 63 }),
    at,
    expect: 'met',
  },
  {
    name: 'the amendment that rewrote the part',
    dossier: circuit({}, { code: 'part-23', amendment: 64 }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'amendment not recorded',
    dossier: circuit({}, { code: 'part-23', amendment: null }),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'CAR 3, whose text was not read, two circuits',
    dossier: circuit({ circuitsGuarded: 2 }, { code: 'car-3', amendment: null }),
    at,
    expect: 'not-met',
  },
  { name: 'CAR 3, one circuit', dossier: circuit({}, { code: 'car-3', amendment: null }), at, expect: 'none' },
  { name: 'rotorcraft, amendment 27-13, one circuit', dossier: circuit({}, part27(13)), at, expect: 'met' },
  {
    name: 'rotorcraft, amendment 27-13, two circuits',
    dossier: circuit({ circuitsGuarded: 2 }, part27(13)),
    at,
    expect: 'not-met',
  },
  {
    name: 'rotorcraft, amendment 27-12, whose text was not read, two circuits',
    dossier: circuit({ circuitsGuarded: 2 }, part27(12)),
    at,
    expect: 'not-met',
  },
  { name: 'rotorcraft, amendment 27-12, one circuit', dossier: circuit({}, part27(12)), at, expect: 'none' },
  {
    name: 'rotorcraft, amendment not recorded',
    dossier: circuit({}, part27(null)),
    at,
    expect: 'cannot-tell',
  },
  { name: 'basis not recorded', dossier: circuit({}, null), at, expect: 'cannot-tell' },
  { name: 'another basis', dossier: circuit({}, { code: 'consensus', amendment: null }), at, expect: 'none' },
  { name: 'no protector', dossier: circuit({ protector: 'none' }), at, expect: 'none' },
  {
    name: 'electrical system not recorded',
    dossier: dossierOf({ configuration: { aircraft: { basis: part23 } } }),
    at,
    expect: 'none',
  },
]);
