import { mechanic, pilot, radioStation, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import { dataUpdate } from './data-update.js';

const of = (fromFlightDeck: boolean | null, time: string | null, ...records: readonly RecordHead[]) =>
  dossierOf({
    configuration: { units: [unitOf({ id: 'gps1', functions: ['gnss', 'com', 'dme'] })] },
    status: {
      loads: [
        {
          unitId: 'gps1',
          database: 'navigation',
          slot: 'this',
          cycle: '2601',
          effective: null,
          expires: null,
          loaded: { date: '2026-01-22', at: time },
          fromFlightDeck,
          coverage: null,
          notices: [],
        },
      ],
      records,
    },
  });
const released = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'release-entry', subjects: ['gps1'], on, outcome: 'approved', agency: radioStation, ...part });
const at = '2026-02-02T18:00Z';

// 43.3(k): from the flight deck, without disassembly, without tools: no maintenance. Else 43.9 and 91.407 as for any other.
testRule(dataUpdate, [
  { name: 'from the flight deck', dossier: of(true, null), at, expect: 'met', message: 'by-pilot' },
  { name: 'nobody recorded how', dossier: of(null, null), at, expect: 'cannot-tell', message: 'unclear' },
  { name: 'with the unit taken apart, no release', dossier: of(false, null), at, expect: 'not-met', message: 'owed' },
  {
    name: 'released the day after',
    dossier: of(false, null, released('2026-01-23')),
    at,
    expect: 'met',
    message: 'released',
  },
  { name: 'released the day before', dossier: of(false, null, released('2026-01-21')), at, expect: 'not-met' },
  { name: 'released that day, no times', dossier: of(false, null, released('2026-01-22')), at, expect: 'cannot-tell' },
  {
    name: 'released that day, an hour later',
    dossier: of(
      false,
      '2026-01-22T15:00Z',
      released('2026-01-22', { done: { date: '2026-01-22', at: '2026-01-22T16:00Z' } }),
    ),
    at,
    expect: 'met',
  },
  {
    name: 'released that day, an hour before',
    dossier: of(
      false,
      '2026-01-22T15:00Z',
      released('2026-01-22', { done: { date: '2026-01-22', at: '2026-01-22T14:00Z' } }),
    ),
    at,
    expect: 'not-met',
  },
  {
    name: 'released, the time of loading that day not recorded',
    dossier: of(false, null, released('2026-01-22', { done: { date: '2026-01-22', at: '2026-01-22T16:00Z' } })),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'released and refused on one day, and no times tell which came last',
    dossier: of(false, null, released('2026-01-23'), released('2026-01-23', { id: 'refused', outcome: 'disapproved' })),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'released, then looked at again with a result that nobody recorded',
    dossier: of(false, null, released('2026-01-23'), released('2026-01-24', { outcome: null })),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'released by a mechanic',
    dossier: of(false, null, released('2026-01-23', { agency: mechanic })),
    at,
    expect: 'met',
  },
  {
    name: 'released by a pilot: a unit with distance measuring is none of a pilot',
    dossier: of(false, null, released('2026-01-23', { agency: pilot })),
    at,
    expect: 'not-met',
  },
  {
    name: 'data of a unit that is not aboard',
    dossier: dossierOf(of(true, null), { configuration: { units: [unitOf({ id: 'gps2', functions: ['gnss'] })] } }),
    at,
    expect: 'none',
  },
]);
