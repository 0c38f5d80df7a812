import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { DatabaseLoad } from '../../dossier/status.js';
import type { Instant } from '../../time/instant.js';
import { otherDataCurrent } from './other-data-current.js';

const types = [
  typeOf({
    id: 'nx5',
    functions: ['gnss'],
    databases: [
      { kind: 'navigation', holdsNext: true },
      { kind: 'terrain', holdsNext: false },
    ],
  }),
];
const unit = unitOf({ id: 'gps1', typeId: 'nx5' });
const load = (expires: Instant | null, part: Partial<DatabaseLoad> = {}): DatabaseLoad => ({
  unitId: 'gps1',
  database: 'terrain',
  slot: 'this',
  cycle: null,
  effective: null,
  expires,
  loaded: { date: '2026-01-10', at: null },
  fromFlightDeck: true,
  coverage: null,
  notices: [],
  ...part,
});
const loaded = (...loads: readonly DatabaseLoad[]) =>
  dossierOf({ configuration: { units: [unit] }, status: { loads } });
const of = (expires: Instant | null) => loaded(load(expires));
const subject = 'gps1:terrain';

// Common practice: the provider's printed expiry, half open.
testRule(otherDataCurrent, [
  {
    name: 'a minute before',
    dossier: of('2026-03-19T00:00Z'),
    types,
    subject,
    at: '2026-03-18T23:59Z',
    expect: 'met',
    message: 'current',
  },
  {
    name: 'at the printed time',
    dossier: of('2026-03-19T00:00Z'),
    types,
    subject,
    at: '2026-03-19T00:00Z',
    expect: 'not-met',
    message: 'expired',
  },
  {
    name: 'no time printed',
    dossier: of(null),
    types,
    subject,
    at: '2026-03-19T00:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'nothing loaded',
    dossier: loaded(),
    types,
    subject,
    at: '2026-03-19T00:00Z',
    expect: 'cannot-tell',
  },
  // The printed expiry of these data alone, of this unit, of what is in use.
  ...(
    [
      ['data of another unit', { unitId: 'gps2' }],
      ['data of another kind', { database: 'obstacle' }],
      ['data that are still to take over', { slot: 'next' }],
    ] as const
  ).map(([name, part]) => ({
    name: `${name} say nothing of it`,
    dossier: loaded(load('2026-04-19T00:00Z', part), load('2026-03-19T00:00Z')),
    types,
    subject,
    at: '2026-03-19T00:00Z',
    expect: 'not-met' as const,
    data: { expires: '2026-03-19T00:00Z' },
  })),
  {
    name: 'navigation data are another rule',
    dossier: of(null),
    types,
    subject: 'gps1:navigation',
    at: '2026-03-19T00:00Z',
    expect: 'none',
  },
  {
    name: 'a unit that is not catalogued',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss'] })] } }),
    at: '2026-03-19T00:00Z',
    expect: 'none',
  },
]);
