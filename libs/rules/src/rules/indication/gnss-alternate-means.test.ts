import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import { gnssAlternateMeans } from './gnss-alternate-means.js';

const at = '2026-03-02T14:00Z';
const type = (...tsos: string[]) =>
  typeOf({ id: 'nx', functions: ['gnss'], authorisations: tsos.map((tso) => ({ tso, class: null })) });
const typed = dossierOf({ configuration: { units: [unitOf({ id: 'gps1', typeId: 'nx' })] } });
const untyped = dossierOf({ configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] } });

testRule(gnssAlternateMeans, [
  {
    name: 'C129 with VOR',
    dossier: typed,
    types: [type('C129a')],
    at,
    capabilities: { 'nav-vor': 'met' },
    expect: 'met',
    message: 'backed',
  },
  {
    name: 'C129, VOR lost',
    dossier: typed,
    types: [type('C129a')],
    at,
    capabilities: { 'nav-vor': 'not-met' },
    expect: 'not-met',
    message: 'alone',
  },
  {
    name: 'C129, VOR in doubt',
    dossier: typed,
    types: [type('C129a')],
    at,
    capabilities: { 'nav-vor': 'cannot-tell' },
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'C196, VOR lost',
    dossier: typed,
    types: [type('C196')],
    at,
    capabilities: { 'nav-vor': 'not-met' },
    expect: 'not-met',
  },
  {
    name: 'C146, VOR lost',
    dossier: typed,
    types: [type('C146d')],
    at,
    capabilities: { 'nav-vor': 'not-met' },
    expect: 'not-applicable',
    message: 'sufficient',
  },
  {
    name: 'C145 beside C129',
    dossier: typed,
    types: [type('C129a', 'C145c')],
    at,
    capabilities: { 'nav-vor': 'not-met' },
    expect: 'not-applicable',
  },
  {
    name: 'not catalogued, VOR lost',
    dossier: untyped,
    at,
    capabilities: { 'nav-vor': 'not-met' },
    expect: 'cannot-tell',
  },
  { name: 'not catalogued, with VOR', dossier: untyped, at, capabilities: { 'nav-vor': 'met' }, expect: 'met' },
  { name: 'no satellite authorisation', dossier: typed, types: [type('C169a')], at, expect: 'none' },
]);
