import { circuitOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Electrical } from '../../dossier/installation.js';
import { continuousLoad } from './continuous-load.js';

const at = '2026-03-02T14:00Z';
const type = (id: string, at14V: number | null, at28V: number | null = null) =>
  typeOf({ id, functions: ['com'], drawA: { at14V, at28V } });
const types = [
  type('48', 48),
  type('48.01', 48.01),
  type('60', 60),
  type('60.01', 60.01),
  type('silent', null, 5),
  type('28v', null, 48),
  type('both', 48, 40),
];
const complete = {
  status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
} as const;
const aircraft = (typeIds: string[], part: Partial<Electrical> = {}) =>
  dossierOf({
    configuration: {
      units: typeIds.map((typeId, index) => unitOf({ id: `u${index}`, typeId })),
      electrical: {
        busV: 14,
        alternatorA: 60,
        batteryAh: null,
        batteryShare: null,
        loadWatch: null,
        circuits: [],
        ...part,
      },
    },
  });
const stated = (typeIds: string[], part: Partial<Electrical> = {}) => dossierOf(aircraft(typeIds, part), complete);
const lamp = circuitOf({ id: 'c', name: 'Landing light', ratingA: 10, wireAwg: 18 });

// AC 43.13-1B 11-35a: 80 % of 60 A is 48 A, unless a placard or monitoring watches it.
testRule(continuousLoad, [
  { name: 'at 80 percent', dossier: stated(['48']), types, at, expect: 'met', message: 'within', data: { loadA: 48 } },
  {
    name: 'a hundredth above 80 percent',
    dossier: stated(['48.01']),
    types,
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'all there is: a placard might allow it', dossier: stated(['60']), types, at, expect: 'cannot-tell' },
  { name: 'more than there is', dossier: stated(['60.01']), types, at, expect: 'not-met', message: 'over' },
  { name: 'more than there is, list not stated complete', dossier: aircraft(['60.01']), types, at, expect: 'not-met' },
  { name: 'list of equipment not stated complete', dossier: aircraft(['48']), types, at, expect: 'cannot-tell' },
  {
    name: 'a unit that draws nothing by its manual, stated at the other voltage',
    dossier: stated(['48', 'passive']),
    types: [...types, type('passive', null, 0)],
    at,
    expect: 'met',
    data: { loadA: 48 },
  },
  { name: 'a unit without a stated draw', dossier: stated(['48', 'silent']), types, at, expect: 'cannot-tell' },
  {
    name: 'a circuit that feeds no unit',
    dossier: stated(['48'], { circuits: [lamp] }),
    types,
    at,
    expect: 'cannot-tell',
  },
  { name: '28 V draws on a 28 V bus', dossier: stated(['28v'], { busV: 28 }), types, at, expect: 'met' },
  { name: '24 V battery', dossier: stated(['28v'], { busV: 24 }), types, at, expect: 'met' },
  { name: 'bus voltage not recorded', dossier: stated(['48'], { busV: null }), types, at, expect: 'cannot-tell' },
  { name: 'a bus of which no manual speaks', dossier: stated(['48'], { busV: 115 }), types, at, expect: 'cannot-tell' },
  { name: 'alternator not recorded', dossier: stated(['48'], { alternatorA: null }), types, at, expect: 'cannot-tell' },
  { name: 'electrical system not recorded', dossier: dossierOf(), at, expect: 'none' },
  {
    name: 'above 80 percent under a placard',
    dossier: stated(['60'], { loadWatch: 'placard' }),
    types,
    at,
    expect: 'met',
    data: { limitA: 60 },
  },
  {
    name: 'more than there is under a placard',
    dossier: stated(['60.01'], { loadWatch: 'placard' }),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'above 80 percent with monitoring',
    dossier: stated(['48.01'], { loadWatch: 'monitoring' }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'above 80 percent, nothing watches it',
    dossier: stated(['48.01'], { loadWatch: 'none' }),
    types,
    at,
    expect: 'not-met',
    message: 'unwatched',
    data: { limitA: 48, lightV: 13 },
  },
  {
    name: 'the same on 28 V: the light trips below 26 V',
    dossier: stated(['both', 'light'], { busV: 28, loadWatch: 'none' }),
    types: [...types, type('light', 1, 9)],
    at,
    expect: 'not-met',
    message: 'unwatched',
    data: { loadA: 49, lightV: 26 },
  },
  {
    name: 'all there is, nothing watches it: a placard would do',
    dossier: stated(['60'], { loadWatch: 'none' }),
    types,
    at,
    expect: 'not-met',
    message: 'unwatched',
    data: { loadA: 60, limitA: 48 },
  },
  {
    name: 'on a bus of which the circular names no light',
    dossier: stated([], { busV: 115, loadWatch: 'none', circuits: [{ ...lamp, loadA: 49, intermittent: false }] }),
    at,
    expect: 'not-met',
    message: 'over',
    data: { lightV: null },
  },
  {
    name: 'a circuit that feeds no unit, its load recorded',
    dossier: stated(['48'], { circuits: [{ ...lamp, loadA: 0.01, intermittent: false }], loadWatch: 'none' }),
    types,
    at,
    expect: 'not-met',
    data: { loadA: 48.01 },
  },
  {
    name: 'such a circuit, intermittent',
    dossier: stated(['48'], { circuits: [{ ...lamp, loadA: 30, intermittent: true }], loadWatch: 'none' }),
    types,
    at,
    expect: 'met',
  },
  // 12 V batteries charge at up to 15 V, 24 V ones at up to 29 V; between and beyond no manual states a draw.
  { name: '11.9 V', dossier: stated(['both'], { busV: 11.9 }), types, at, expect: 'cannot-tell' },
  { name: '12 V', dossier: stated(['both'], { busV: 12 }), types, at, expect: 'met', data: { loadA: 48 } },
  { name: '15 V', dossier: stated(['both'], { busV: 15 }), types, at, expect: 'met', data: { loadA: 48 } },
  { name: '15.1 V', dossier: stated(['both'], { busV: 15.1 }), types, at, expect: 'cannot-tell' },
  { name: '23.9 V', dossier: stated(['both'], { busV: 23.9 }), types, at, expect: 'cannot-tell' },
  { name: '24 V', dossier: stated(['both'], { busV: 24 }), types, at, expect: 'met', data: { loadA: 40 } },
  { name: '29 V', dossier: stated(['both'], { busV: 29 }), types, at, expect: 'met', data: { loadA: 40 } },
  { name: '29.1 V', dossier: stated(['both'], { busV: 29.1 }), types, at, expect: 'cannot-tell' },
  {
    name: 'a portable device draws nothing of the bus, whatever its manual says',
    dossier: dossierOf(stated(['48']), {
      configuration: { units: [unitOf({ id: 'u0', typeId: '48' }), unitOf({ id: 'p', typeId: 'portable' })] },
    }),
    types: [...types, typeOf({ id: 'portable', functions: ['portable-display'], drawA: { at14V: 2, at28V: 1 } })],
    at,
    expect: 'met',
    data: { loadA: 48 },
  },
  {
    name: 'a circuit of a unit that is counted by its manual is not counted again',
    dossier: stated(['48'], { circuits: [{ ...lamp, units: ['u0'], loadA: 30, intermittent: false }] }),
    types,
    at,
    expect: 'met',
    data: { loadA: 48 },
  },
  {
    name: 'nor is its own load asked for',
    dossier: stated(['48'], { circuits: [{ ...lamp, units: ['u0'] }] }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a lamp, intermittent, its load not recorded',
    dossier: stated(['48'], { circuits: [{ ...lamp, intermittent: true }] }),
    types,
    at,
    expect: 'met',
  },
]);
