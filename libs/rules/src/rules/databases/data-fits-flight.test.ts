import { mechanic, pilot, recordOf, typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { DatabaseLoad, RecordHead } from '../../dossier/status.js';
import { dataFitsFlight } from './data-fits-flight.js';

const types = [typeOf({ id: 'nx', functions: ['gnss'], databases: [{ kind: 'navigation', holdsNext: true }] })];
const load = (part: Partial<DatabaseLoad> = {}): DatabaseLoad => ({
  unitId: 'gps1',
  database: 'navigation',
  slot: 'this',
  cycle: '2601',
  effective: null,
  expires: null,
  loaded: { date: '2026-01-22', at: null },
  fromFlightDeck: true,
  coverage: ['Mainland', 'Islands'],
  notices: [],
  ...part,
});
const of = (loads: readonly DatabaseLoad[], ...records: readonly RecordHead[]) =>
  dossierOf({ configuration: { units: [unitOf({ id: 'gps1', typeId: 'nx' })] }, status: { loads, records } });
const verification = (part: Partial<RecordHead> = {}) =>
  recordOf({
    kind: 'data-verification',
    subjects: ['gps1'],
    on: '2026-02-02',
    agency: pilot,
    note: 'RNAV 18, chart of 22 January',
    ...part,
  });
const procedure = load({ notices: [{ on: 'procedure', against: 'RNAV 18' }] });
const waypoint = load({ notices: [{ on: 'waypoint', against: 'TALLY' }] });

const ifr = { rules: 'ifr', region: 'Islands' } as const;
const base = { types, at: '2026-02-02T18:00Z', flight: ifr };
const region = { ...base, subject: 'gps1:this:region' };
const approach = { ...base, subject: 'gps1:this:approach' };
const enRoute = { ...base, subject: 'gps1:this:en-route' };

// AIM 1-1-17 b.2(b): current and fit for the region; b.2(b)(4): no notice of the provider against the waypoint or procedure.
testRule(dataFitsFlight, [
  { ...region, name: 'the region is covered', dossier: of([load()]), expect: 'met', message: 'covered' },
  {
    ...region,
    name: 'another region',
    dossier: of([load({ coverage: ['Mainland'] })]),
    expect: 'not-met',
    message: 'elsewhere',
    data: { coverage: 'Mainland' },
  },
  { ...region, name: 'a list of nothing', dossier: of([load({ coverage: [] })]), expect: 'not-met' },
  {
    ...region,
    name: 'coverage not recorded',
    dossier: of([load({ coverage: null })]),
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    ...region,
    name: 'coverage not recorded, region of the flight not said',
    dossier: of([load({ coverage: null })]),
    flight: { rules: 'ifr', region: null },
    expect: 'not-applicable',
    message: 'not-asked',
  },
  {
    ...region,
    name: 'another region, under VFR',
    dossier: of([load({ coverage: ['Mainland'] })]),
    flight: { rules: 'vfr', region: 'Islands' },
    expect: 'not-applicable',
  },
  // 2602 takes over on 19 February 2026 at 0901Z.
  ...(
    [
      ['this cycle for another region, the minute before the next takes over', 'this', '2026-02-19T09:00Z', 'not-met'],
      ['this cycle for another region, when the next has taken over', 'this', '2026-02-19T09:01Z', 'not-applicable'],
      ['the next cycle, the minute before it takes over', 'next', '2026-02-19T09:00Z', 'not-applicable'],
      ['the next cycle, when it takes over', 'next', '2026-02-19T09:01Z', 'met'],
    ] as const
  ).map(([name, slot, at, expect]) => ({
    ...base,
    name,
    at,
    subject: `gps1:${slot}:region`,
    dossier: of([load({ coverage: ['Mainland'] }), load({ slot: 'next', cycle: '2602', coverage: ['Islands'] })]),
    expect,
  })),
  { ...approach, name: 'no notice on record: nothing is said', dossier: of([load()]), expect: 'none' },
  {
    ...approach,
    name: 'a notice against a procedure',
    dossier: of([procedure]),
    expect: 'cannot-tell',
    message: 'noticed',
    data: { against: 'RNAV 18' },
  },
  {
    ...approach,
    name: 'two notices: both are named',
    dossier: of([load({ notices: [...procedure.notices, ...waypoint.notices] })]),
    expect: 'cannot-tell',
    data: { against: 'RNAV 18, TALLY' },
  },
  { ...enRoute, name: 'a notice against a procedure bears on no route', dossier: of([procedure]), expect: 'none' },
  { ...enRoute, name: 'a notice against a waypoint, on the way', dossier: of([waypoint]), expect: 'cannot-tell' },
  { ...approach, name: 'a notice against a waypoint, in a procedure', dossier: of([waypoint]), expect: 'cannot-tell' },
  {
    ...approach,
    name: 'a notice against a procedure, under VFR',
    dossier: of([procedure]),
    flight: { rules: 'vfr' },
    expect: 'not-applicable',
  },
  {
    ...approach,
    name: 'verified by the pilot on that day',
    dossier: of([procedure], verification()),
    expect: 'met',
    message: 'verified',
  },
  {
    ...approach,
    name: 'verified by the pilot the day before',
    dossier: of([procedure], verification({ done: { date: '2026-02-01', at: null } })),
    expect: 'cannot-tell',
  },
  {
    ...approach,
    name: 'verified, but for which procedure is not recorded',
    dossier: of([procedure], verification({ note: null })),
    expect: 'cannot-tell',
  },
  {
    ...approach,
    name: 'verified by a mechanic',
    dossier: of([procedure], verification({ agency: mechanic })),
    expect: 'cannot-tell',
  },
  {
    ...base,
    name: 'data of a unit without satellite navigation',
    dossier: dossierOf({
      configuration: { units: [unitOf({ id: 'gps1', functions: ['portable-display'] })] },
      status: { loads: [load({ coverage: null })] },
    }),
    expect: 'none',
  },
  { ...enRoute, name: 'waypoints verified on that day', dossier: of([waypoint], verification()), expect: 'met' },
]);
