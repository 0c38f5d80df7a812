import { inspector, mechanic, pilot, radioStation, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { authorisedPerson } from './authorised-person.js';

const of = (kind: RecordHead['kind'], agency: RecordHead['agency'], part: Partial<RecordHead> = {}) =>
  dossierOf(
    { configuration: { units: [unitOf({ id: 'xp1', functions: ['transponder'] })] } },
    { status: { records: [recordOf({ kind, on: '2026-03-03', agency, ...part })] } },
  );
const certified = (certificate: Dossier['configuration']['aircraft']['certificate'], dossier: Dossier) =>
  dossierOf(dossier, { configuration: { aircraft: { certificate } } });
const repairman = { ...pilot, kind: 'repairman', ratings: ['light-sport-maintenance'] } as const;
const at = '2026-03-20T12:00Z';
/** Two entries of one kind, the older of them closing what `closed` names. */
const answered = (kind: RecordHead['kind'], agency: RecordHead['agency'], closed: string) =>
  dossierOf({
    status: {
      records: [
        recordOf({ kind, on: '2026-03-03', id: 'older', agency }),
        recordOf({ kind, on: '2026-03-10', id: 'newer', agency }),
      ],
      obligations: [
        {
          id: 'owed',
          what: kind,
          subject: 'aircraft',
          since: { date: '2026-03-02', at: null },
          becauseOf: 'unit.install',
          touched: null,
          closedBy: closed,
        },
      ],
    },
  });

testRule(authorisedPerson, [
  {
    name: 'annual by an inspector',
    dossier: of('annual-inspection', inspector),
    at,
    expect: 'met',
    message: 'allowed',
    data: { what: 'annual-inspection', name: 'R. Tamsin' },
  },
  {
    name: 'annual by a mechanic',
    dossier: of('annual-inspection', mechanic),
    at,
    expect: 'not-met',
    message: 'not-allowed',
  },
  { name: '100-hour by a mechanic', dossier: of('hundred-hour-inspection', mechanic), at, expect: 'met' },
  { name: 'transponder test by an inspector', dossier: of('transponder-test', inspector), at, expect: 'not-met' },
  { name: 'transponder test by a station', dossier: of('transponder-test', radioStation), at, expect: 'met' },
  { name: 'static test by a mechanic', dossier: of('static-system-test', mechanic), at, expect: 'met' },
  { name: 'altimeter test by a mechanic', dossier: of('altimeter-test', mechanic), at, expect: 'not-met' },
  {
    name: 'release of a transponder by a pilot',
    dossier: of('release-entry', pilot, { subjects: ['xp1'] }),
    at,
    expect: 'not-met',
  },
  {
    name: '100-hour of a light-sport aircraft by its repairman',
    dossier: certified('light-sport', of('hundred-hour-inspection', repairman)),
    at,
    expect: 'met',
  },
  {
    name: 'condition inspection of a light-sport aircraft by its repairman',
    dossier: certified('light-sport', of('condition-inspection', repairman)),
    at,
    expect: 'met',
  },
  {
    name: 'condition inspection of an experimental aircraft by a repairman',
    dossier: certified('experimental', of('condition-inspection', repairman)),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'signer not recorded',
    dossier: of('annual-inspection', null),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
    data: { name: 'the signer' },
  },
  {
    name: 'ratings not recorded',
    dossier: of('annual-inspection', { ...inspector, ratings: null }),
    at,
    expect: 'cannot-tell',
  },
  { name: 'entry not seen', dossier: of('annual-inspection', mechanic, { evidence: 'reported' }), at, expect: 'none' },
  { name: 'a kind that anybody may sign', dossier: of('vor-check', pilot), at, expect: 'none' },
  {
    name: 'an older entry is history',
    dossier: dossierOf(of('annual-inspection', inspector), {
      status: {
        records: [
          recordOf({ kind: 'annual-inspection', on: '2025-03-03', agency: mechanic, id: 'older' }),
          recordOf({ kind: 'annual-inspection', on: '2026-03-03', agency: inspector, id: 'newer' }),
        ],
      },
    }),
    at,
    subject: 'older',
    expect: 'none',
  },
  {
    name: 'an older entry that closes what a change left owing stays judged, and stops the release',
    dossier: answered('static-leak-test', pilot, 'older'),
    at,
    subject: 'older',
    expect: 'not-met',
  },
  {
    name: 'the newer one answers for nothing then, and stops no release',
    dossier: answered('static-leak-test', pilot, 'older'),
    at,
    subject: 'newer',
    expect: 'not-met',
  },
  {
    name: 'an older entry that closes nothing is history',
    dossier: answered('static-leak-test', pilot, 'newer'),
    at,
    subject: 'older',
    expect: 'none',
  },
  {
    name: 'the newest entry that was seen is judged, whatever was only reported since',
    dossier: dossierOf({
      status: {
        records: [
          recordOf({ kind: 'annual-inspection', on: '2026-03-03', id: 'seen', agency: mechanic }),
          recordOf({
            kind: 'annual-inspection',
            on: '2026-03-10',
            id: 'heard',
            agency: mechanic,
            evidence: 'reported',
          }),
        ],
      },
    }),
    at,
    subject: 'seen',
    expect: 'not-met',
  },
  {
    name: 'an entry that was not seen is judged by nobody, even where it answers what work called for',
    dossier: dossierOf({
      status: {
        records: [
          recordOf({ kind: 'compass-swing', on: '2026-03-10', id: 'heard', agency: mechanic, evidence: 'reported' }),
        ],
        obligations: [
          {
            id: 'compass-swing:aircraft',
            what: 'compass-swing',
            subject: 'aircraft',
            since: { date: '2026-03-02', at: null },
            becauseOf: 'work.done',
            touched: 'electrical',
            closedBy: 'heard',
          },
        ],
      },
    }),
    at,
    expect: 'none',
  },
  {
    name: 'an entry about two things, newest on one of them',
    dossier: dossierOf({
      status: {
        records: [
          recordOf({ kind: 'altimeter-test', on: '2026-03-03', id: 'both', subjects: ['a1', 'a2'], agency: mechanic }),
          recordOf({ kind: 'altimeter-test', on: '2026-03-10', id: 'one', subjects: ['a1'], agency: radioStation }),
        ],
      },
    }),
    at,
    subject: 'both',
    expect: 'not-met',
  },
  {
    name: '100-hour of an experimental aircraft by a light-sport repairman',
    dossier: certified('experimental', of('hundred-hour-inspection', repairman)),
    at,
    expect: 'met',
  },
  {
    name: 'program inspection of a light-sport aircraft by its repairman is another matter',
    dossier: certified('light-sport', of('program-inspection', repairman)),
    at,
    expect: 'not-met',
  },
]);
