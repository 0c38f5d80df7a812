import { expect, it } from 'vitest';
import { mechanic, pilot, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import { statements } from '../../../testing/rule-case.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentType } from '../../catalogue/type.js';
import type { DatabaseLoad, RecordHead } from '../../dossier/status.js';
import { navigationDataCurrent } from './navigation-data-current.js';

const type = (holdsNext: boolean, ...others: EquipmentType['databases']) =>
  typeOf({ id: 'nx', functions: ['gnss'], databases: [{ kind: 'navigation', holdsNext }, ...others] });
const types = [type(true)];
const load = (part: Partial<DatabaseLoad> = {}): DatabaseLoad => ({
  unitId: 'gps1',
  database: 'navigation',
  slot: 'this',
  cycle: '2601',
  effective: null,
  expires: null,
  loaded: { date: '2026-01-22', at: null },
  fromFlightDeck: true,
  coverage: null,
  notices: [],
  ...part,
});
const next = (part: Partial<DatabaseLoad> = {}) => load({ slot: 'next', cycle: '2602', ...part });
const unit = (
  loads: readonly DatabaseLoad[],
  currentDataRequired: boolean | null | 'no supplement' = null,
  records: readonly RecordHead[] = [],
  typed = true,
) =>
  dossierOf({
    configuration: {
      units: [unitOf({ id: 'gps1', ...(typed ? { typeId: 'nx' } : { functions: ['gnss'] }) })],
      supplements:
        currentDataRequired === 'no supplement'
          ? []
          : [
              {
                id: 's1',
                units: ['gps1'],
                document: { title: 'Supplement 12', revision: 'A', date: null },
                aboard: true,
                currentDataRequired,
                grants: null,
              },
            ],
    },
    status: { loads, records },
  });
const ifr = { rules: 'ifr' } as const;
const enRoute = { types, subject: 'gps1:en-route', flight: ifr } as const;
const approach = { types, subject: 'gps1:approach', flight: ifr } as const;
const checked = (part: Partial<Parameters<typeof recordOf>[0]> = {}) =>
  recordOf({
    kind: 'data-verification',
    on: '2026-03-02',
    subjects: ['gps1'],
    agency: pilot,
    note: 'Approach to runway 18 against its chart of 19 February.',
    ...part,
  });

// Cycle 2601 runs from 22 Jan to 19 Feb 2026, 2602 to 19 Mar 2026, each from 0901Z.
testRule(navigationDataCurrent, [
  {
    name: 'last minute of the cycle',
    dossier: unit([load()], true),
    ...approach,
    at: '2026-02-19T09:00Z',
    expect: 'met',
    message: 'current',
    data: { expires: '2026-02-19T09:01Z' },
  },
  {
    name: 'first minute after it',
    dossier: unit([load()], true),
    ...approach,
    at: '2026-02-19T09:01Z',
    expect: 'not-met',
    message: 'expired',
  },
  {
    name: 'loaded ahead: the minute before it takes effect',
    dossier: unit([load()], true),
    ...approach,
    at: '2026-01-22T09:00Z',
    expect: 'not-met',
  },
  {
    name: 'first minute of the cycle',
    dossier: unit([load()], true),
    ...approach,
    at: '2026-01-22T09:01Z',
    expect: 'met',
  },
  { name: 'en route likewise', dossier: unit([load()], true), ...enRoute, at: '2026-02-19T09:01Z', expect: 'not-met' },

  // The next cycle, already loaded, takes over at 0901Z.
  {
    name: 'old cycle gone, next one already loaded',
    dossier: unit([load(), next()], true),
    ...approach,
    at: '2026-02-19T09:01Z',
    expect: 'met',
    data: { expires: '2026-03-19T09:01Z' },
  },
  {
    name: 'printed beyond the end of the next one',
    dossier: unit([load({ expires: '2026-04-30T09:01Z' }), next()], true),
    ...approach,
    at: '2026-03-19T09:01Z',
    expect: 'met',
    data: { expires: '2026-04-30T09:01Z' },
  },
  {
    name: 'only the next cycle loaded: the minute before',
    dossier: unit([next()], true),
    ...approach,
    at: '2026-02-19T09:00Z',
    expect: 'not-met',
  },
  {
    name: 'only the next cycle loaded: better from 0901Z',
    dossier: unit([next()], true),
    ...approach,
    at: '2026-02-19T09:01Z',
    expect: 'met',
  },
  {
    name: 'a unit that holds one cycle alone',
    dossier: unit([load(), next()], true),
    ...approach,
    types: [type(false)],
    at: '2026-02-19T09:01Z',
    expect: 'not-met',
  },
  {
    name: 'one that holds a cycle of navigation data and two of terrain',
    dossier: unit([load(), next()], true),
    ...approach,
    types: [type(false, { kind: 'terrain', holdsNext: true })],
    at: '2026-02-19T09:01Z',
    expect: 'not-met',
  },

  // The printed expiry wins over the computed end.
  {
    name: 'printed expiry later than the cycle',
    dossier: unit([load({ expires: '2026-02-20T09:01Z' })], true),
    ...approach,
    at: '2026-02-20T09:00Z',
    expect: 'met',
  },
  {
    name: 'printed expiry reached',
    dossier: unit([load({ expires: '2026-02-20T09:01Z' })], true),
    ...approach,
    at: '2026-02-20T09:01Z',
    expect: 'not-met',
  },
  {
    name: 'printed expiry without a cycle, effective time unknown',
    dossier: unit([load({ cycle: null, expires: '2026-02-19T09:01Z' })], true),
    ...approach,
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'printed times without a cycle',
    dossier: unit([load({ cycle: null, effective: '2026-01-22T09:01Z', expires: '2026-02-19T09:01Z' })], true),
    ...approach,
    at: '2026-02-01T12:00Z',
    expect: 'met',
  },
  {
    name: 'a cycle that does not exist',
    dossier: unit([load({ cycle: '2614' })], true),
    ...approach,
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'neither cycle nor times',
    dossier: unit([load({ cycle: null })], true),
    ...approach,
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'old cycle gone, next one loaded, of which no cycle is recorded',
    dossier: unit([load(), next({ cycle: null })], true),
    ...approach,
    at: '2026-02-19T09:01Z',
    expect: 'cannot-tell',
    data: { expires: '2026-02-19T09:01Z' },
  },
  {
    name: 'terrain data are no navigation data',
    dossier: unit([load({ database: 'terrain' })], true),
    ...approach,
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unrecorded',
  },
  {
    name: 'nothing recorded',
    dossier: unit([], true),
    ...enRoute,
    at: '2026-02-01T12:00Z',
    expect: 'cannot-tell',
    message: 'unrecorded',
  },
  {
    name: 'a unit without navigation data',
    dossier: unit([], true),
    ...enRoute,
    types: [typeOf({ id: 'nx', functions: ['gnss'] })],
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'a unit that holds terrain data alone',
    dossier: unit([], true),
    ...enRoute,
    types: [typeOf({ id: 'nx', functions: ['gnss'], databases: [{ kind: 'terrain', holdsNext: false }] })],
    at: '2026-02-01T12:00Z',
    expect: 'not-met',
  },

  // Expired: the supplement's word.
  {
    name: 'expired, supplement not read, approach',
    dossier: unit([load()]),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'expired, no supplement recorded, en route',
    dossier: unit([load()], 'no supplement'),
    ...enRoute,
    at: '2026-03-02T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'expired, supplement allows verified data, en route: the pilot verifies for the flight',
    dossier: unit([load()], false),
    ...enRoute,
    at: '2026-03-02T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'expired, supplement allows verified data, approach: none recorded',
    dossier: unit([load()], false),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'not-met',
  },

  // A verification is good for its day: 2 March in Chicago runs from 06:00Z to 06:00Z.
  {
    name: 'verified for the day, its first minute',
    dossier: unit([load()], false, [checked()]),
    ...approach,
    at: '2026-03-02T06:00Z',
    expect: 'met',
  },
  {
    name: 'the minute before that day',
    dossier: unit([load()], false, [checked()]),
    ...approach,
    at: '2026-03-02T05:59Z',
    expect: 'not-met',
  },
  {
    name: 'last minute of that day',
    dossier: unit([load()], false, [checked()]),
    ...approach,
    at: '2026-03-03T05:59Z',
    expect: 'met',
  },
  {
    name: 'the day after',
    dossier: unit([load()], false, [checked()]),
    ...approach,
    at: '2026-03-03T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'verified for several days',
    dossier: unit([load()], false, [checked({ expires: '2026-03-04' })]),
    ...approach,
    at: '2026-03-05T05:59Z',
    expect: 'met',
  },
  {
    name: 'not beyond the cycle in which it was verified',
    dossier: unit([load()], false, [checked({ expires: '2026-04-30' })]),
    ...approach,
    at: '2026-03-19T09:01Z',
    expect: 'not-met',
  },
  {
    name: 'to the end of the cycle in which it was verified',
    dossier: unit([load()], false, [checked({ expires: '2026-04-30' })]),
    ...approach,
    at: '2026-03-19T09:00Z',
    expect: 'met',
  },
  {
    name: 'expired, verified by nobody who signed',
    dossier: unit([load()], false, [checked({ agency: null })]),
    ...approach,
    at: '2026-03-02T18:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'expired, verified by a mechanic who is no pilot',
    dossier: unit([load()], false, [checked({ agency: mechanic })]),
    ...approach,
    at: '2026-03-02T18:00Z',
    expect: 'not-met',
  },
  {
    name: 'expired, verified, but the entry names no procedure',
    dossier: unit([load()], false, [checked({ note: null })]),
    ...approach,
    at: '2026-03-02T18:00Z',
    expect: 'cannot-tell',
  },
  ...(
    [
      ['the place of the procedure', { place: 'Runway 18, field' }],
      ['the chart', { document: { title: 'Approach chart 18', revision: null, date: '2026-02-19' } }],
    ] as const
  ).map(([names, part]) => ({
    name: `expired, verified, the entry names ${names}`,
    dossier: unit([load()], false, [checked({ note: null, ...part })]),
    ...approach,
    at: '2026-03-02T18:00Z',
    expect: 'met' as const,
  })),
  {
    name: 'expired, verified en route, where no procedure is flown',
    dossier: unit([load()], false, [checked({ note: null })]),
    ...enRoute,
    at: '2026-03-02T18:00Z',
    expect: 'met',
  },
  {
    name: 'verification reported, entry not seen',
    dossier: unit([load()], false, [checked({ evidence: 'reported' })]),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'verified, no supplement recorded',
    dossier: unit([load()], 'no supplement', [checked()]),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'verified, but the supplement wants current data',
    dossier: unit([load()], true, [checked()]),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'not-met',
  },
  {
    name: 'verified, supplement not read',
    dossier: unit([load()], null, [checked()]),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'cannot-tell',
  },

  {
    name: 'expired, under VFR',
    dossier: unit([load()], true),
    ...approach,
    flight: { rules: 'vfr' },
    at: '2026-03-02T12:00Z',
    expect: 'not-applicable',
    message: 'vfr-free',
  },
  {
    name: 'not catalogued, next cycle loaded',
    dossier: unit([next()], true, [], false),
    ...approach,
    at: '2026-03-02T12:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'no satellite unit',
    dossier: dossierOf({ configuration: { units: [unitOf({ id: 'n', functions: ['com'] })] } }),
    at: '2026-03-02T12:00Z',
    expect: 'none',
  },
]);

it('data of a unit fall due once, not once for each use', () => {
  const drafts = statements(navigationDataCurrent, {
    name: '',
    dossier: unit([load()]),
    types,
    at: '2026-02-01T12:00Z',
    expect: 'met',
  });
  expect(drafts.flatMap(({ due = [] }) => due)).toEqual([
    { what: 'navigation-data', lapses: '2026-02-19T09:01Z', combine: 'first' },
  ]);
});
