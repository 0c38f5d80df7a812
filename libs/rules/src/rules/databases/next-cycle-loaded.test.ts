import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { DatabaseLoad } from '../../dossier/status.js';
import { nextCycleLoaded } from './next-cycle-loaded.js';

const type = (holdsNext: boolean, ...others: EquipmentType['databases']) =>
  typeOf({ id: 'nx', functions: ['gnss'], databases: [{ kind: 'navigation', holdsNext }, ...others] });
const types = [type(true)];
const load = (slot: 'this' | 'next', cycle: string | null): DatabaseLoad => ({
  unitId: 'gps1',
  database: 'navigation',
  slot,
  cycle,
  effective: null,
  expires: null,
  loaded: { date: '2026-01-22', at: null },
  fromFlightDeck: true,
  coverage: null,
  notices: [],
});
const unit = (...loads: DatabaseLoad[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'gps1', typeId: 'nx' })] }, status: { loads } });

// Cycle 2601 ends on 19 Feb 2026 at 0901Z; its last week begins on 12 Feb at 0901Z.
testRule(nextCycleLoaded, [
  {
    name: 'the minute before the last week',
    dossier: unit(load('this', '2601')),
    types,
    at: '2026-02-12T09:00Z',
    expect: 'met',
    message: 'ready',
  },
  {
    name: 'the last week begins',
    dossier: unit(load('this', '2601')),
    types,
    at: '2026-02-12T09:01Z',
    expect: 'not-met',
    message: 'wanted',
    data: { expires: '2026-02-19T09:01Z' },
  },
  {
    name: 'next cycle loaded',
    dossier: unit(load('this', '2601'), load('next', '2602')),
    types,
    at: '2026-02-15T12:00Z',
    expect: 'met',
  },
  {
    name: 'the same cycle loaded twice',
    dossier: unit(load('this', '2601'), load('next', '2601')),
    types,
    at: '2026-02-15T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'which cycle lies ready is not recorded',
    dossier: unit(load('this', '2601'), load('next', null)),
    types,
    at: '2026-02-15T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'present cycle not recorded',
    dossier: unit(load('this', null)),
    types,
    at: '2026-02-15T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'the next cycle alone is loaded',
    dossier: unit(load('next', '2602')),
    types,
    at: '2026-02-15T12:00Z',
    expect: 'cannot-tell',
    data: { expires: null },
  },
  { name: 'nothing loaded', dossier: unit(), types, at: '2026-02-15T12:00Z', expect: 'cannot-tell' },
  {
    name: 'a unit that holds one cycle',
    dossier: unit(load('this', '2601')),
    types: [type(false)],
    at: '2026-02-15T12:00Z',
    expect: 'none',
  },
  {
    name: 'one that holds a cycle of navigation data and two of terrain',
    dossier: unit(load('this', '2601')),
    types: [type(false, { kind: 'terrain', holdsNext: true })],
    at: '2026-02-15T12:00Z',
    expect: 'none',
  },
  {
    name: 'one that holds two cycles of navigation data and terrain once',
    dossier: unit(load('this', '2601')),
    types: [type(true, { kind: 'terrain', holdsNext: false })],
    at: '2026-02-15T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'a unit that is not catalogued',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] } }),
    at: '2026-02-15T12:00Z',
    expect: 'none',
  },
]);
