import { circuitOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Circuit, Electrical } from '../../dossier/installation.js';
import { loadByCondition } from './load-by-condition.js';

const at = '2026-03-02T14:00Z';
const types = [typeOf({ id: 'vc1', functions: ['com'], drawA: { at14V: 3, at28V: null } })];
const complete = {
  status: { completeness: [{ list: 'equipment', stated: { asOf: '2025-01-01', by: 'J. Orrell' } }] },
} as const;
/** On in cruise and landing alone, so that the others carry less. */
const radios = (part: Partial<Circuit> = {}) =>
  circuitOf({ id: 'c1', loadA: 40, intermittent: false, usedIn: ['cruise', 'landing'], units: ['u1'], ...part });
const light = (part: Partial<Circuit> = {}) =>
  circuitOf({ id: 'c2', loadA: 8, intermittent: false, usedIn: ['take-off', 'landing'], ...part });
const aircraft = (circuits: Circuit[], part: Partial<Electrical> = {}) =>
  dossierOf(complete, {
    configuration: {
      units: [unitOf({ id: 'u1', typeId: 'vc1' })],
      electrical: {
        busV: 14,
        alternatorA: 60,
        batteryAh: null,
        batteryShare: null,
        loadWatch: 'none',
        circuits,
        ...part,
      },
    },
  });

// AC 43.13-1B 11-35a: 80 % of 60 A is 48 A. Landing takes 40 A and 8 A.
testRule(loadByCondition, [
  {
    name: '48 A on landing',
    dossier: aircraft([radios(), light()]),
    types,
    at,
    expect: 'met',
    message: 'within',
    data: { condition: 'landing', loadA: 48, limitA: 48 },
  },
  {
    name: 'a hundredth more',
    dossier: aircraft([radios(), light({ loadA: 8.01 })]),
    types,
    at,
    expect: 'not-met',
    message: 'over',
  },
  {
    name: 'the same sum, never at once',
    dossier: aircraft([radios({ usedIn: ['cruise'] }), light({ loadA: 20 })]),
    types,
    at,
    expect: 'met',
    data: { condition: 'cruise', loadA: 40 },
  },
  {
    name: 'a short intermittent load does not count',
    dossier: aircraft([radios(), light({ loadA: 20, intermittent: true })]),
    types,
    at,
    expect: 'met',
    data: { loadA: 40 },
  },
  {
    name: 'a load on battery alone does not count',
    dossier: aircraft([radios(), light({ loadA: 20, usedIn: ['battery-only'] })]),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'above 80 percent under a placard',
    dossier: aircraft([radios(), light({ loadA: 20 })], { loadWatch: 'placard' }),
    types,
    at,
    expect: 'met',
    data: { limitA: 60 },
  },
  {
    name: 'above 80 percent with monitoring',
    dossier: aircraft([radios(), light({ loadA: 19.99 })], { loadWatch: 'monitoring' }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'above the output under a placard',
    dossier: aircraft([radios(), light({ loadA: 20.01 })], { loadWatch: 'placard' }),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'above 80 percent, what watches it not recorded',
    dossier: aircraft([radios(), light({ loadA: 20 })], { loadWatch: null }),
    types,
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'within 80 percent, what watches it not recorded',
    dossier: aircraft([radios(), light()], { loadWatch: null }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'one load not recorded',
    dossier: aircraft([radios(), light({ loadA: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'when one circuit is on not recorded',
    dossier: aircraft([radios(), light({ usedIn: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'whether one is intermittent not recorded',
    dossier: aircraft([radios(), light({ intermittent: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'the known ones are too much already',
    dossier: aircraft([radios({ loadA: 61 }), light({ loadA: null })]),
    types,
    at,
    expect: 'not-met',
  },
  {
    name: 'nobody analysed it',
    dossier: aircraft([radios({ usedIn: null }), light({ usedIn: null })]),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a unit that draws has no circuit',
    dossier: aircraft([radios({ units: [] }), light()]),
    types,
    at,
    expect: 'cannot-tell',
  },
  { name: 'no circuits recorded', dossier: aircraft([]), types, at, expect: 'cannot-tell' },
  {
    name: 'neither units nor circuits recorded',
    dossier: dossierOf(aircraft([]), { configuration: { units: [] } }),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'alternator not recorded',
    dossier: aircraft([radios()], { alternatorA: null }),
    types,
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'list of equipment not stated complete',
    dossier: dossierOf(aircraft([radios(), light()]), { status: { completeness: [] } }),
    types,
    at,
    expect: 'cannot-tell',
  },
  { name: 'electrical system not recorded', dossier: dossierOf(), types, at, expect: 'none' },
  {
    name: 'a portable device needs no circuit',
    dossier: dossierOf(aircraft([radios(), light()]), {
      configuration: {
        units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'p', functions: ['portable-display'] })],
      },
    }),
    types,
    at,
    expect: 'met',
  },
  {
    name: 'a unit that draws nothing by its manual needs no circuit',
    dossier: dossierOf(aircraft([radios(), light()]), {
      configuration: { units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'i', typeId: 'di1' })] },
    }),
    types: [...types, typeOf({ id: 'di1', functions: ['lateral-deviation'], drawA: { at14V: 0, at28V: null } })],
    at,
    expect: 'met',
  },
  {
    name: 'a unit whose manual does not state what it draws, on no circuit',
    dossier: dossierOf(aircraft([radios(), light()]), {
      configuration: { units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'n', typeId: 'nx' })] },
    }),
    types: [...types, typeOf({ id: 'nx', functions: ['gnss'], drawA: null, supplyV: null })],
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'a unit that draws and is on no circuit',
    dossier: dossierOf(aircraft([radios(), light()]), {
      configuration: { units: [unitOf({ id: 'u1', typeId: 'vc1' }), unitOf({ id: 'u2', typeId: 'vc1' })] },
    }),
    types,
    at,
    expect: 'cannot-tell',
  },
]);
