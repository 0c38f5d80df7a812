import { mechanic, pilot, recordOf } from '../../../testing/builders.js';
import type { Part } from '../../../testing/dossiers.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { RecordHead } from '../../dossier/status.js';
import { conditionInspection } from './condition-inspection.js';

const of = (
  certificate: Dossier['configuration']['aircraft']['certificate'],
  months: number | null,
  part: Partial<RecordHead> | null = {},
): Dossier => {
  const authority: Part<Dossier> = {
    configuration: {
      aircraft: { certificate },
      authority: {
        dayVfr: true,
        nightVfr: false,
        ifr: false,
        hire: false,
        document: { title: 'Operating limitations', revision: null, date: '2019-08-12' },
        conditionInspectionMonths: months,
      },
    },
  };
  const records =
    part === null ? [] : [recordOf({ kind: 'condition-inspection', on: '2026-07-05', agency: mechanic, ...part })];
  return dossierOf(authority, { status: { records } });
};
const repairman = { kind: 'repairman', name: 'O. Brandt', certificate: 'R-0005', ratings: [] } as const;
const soon = '2026-10-01T12:00Z';

// 14 CFR 91.327(b)(2): 5 Jul 2026 is good through 31 Jul 2027; Chicago's 31 July ends at 05:00 UTC.
testRule(conditionInspection, [
  {
    name: 'light-sport, last minute',
    dossier: of('light-sport', null),
    at: '2027-08-01T04:59Z',
    expect: 'met',
    message: 'current',
    data: { lastGood: '2027-07-31', months: 12 },
  },
  {
    name: 'light-sport, the minute after',
    dossier: of('light-sport', null),
    at: '2027-08-01T05:00Z',
    expect: 'not-met',
    message: 'lapsed',
  },
  {
    name: 'light-sport, whatever the limitations say',
    dossier: of('light-sport', 24),
    at: '2027-08-01T05:00Z',
    expect: 'not-met',
  },
  {
    name: 'light-sport, by a repairman with the maintenance rating',
    dossier: of('light-sport', null, { agency: { ...repairman, ratings: ['light-sport-maintenance'] } }),
    at: soon,
    expect: 'met',
  },
  {
    name: 'light-sport, by a repairman without it',
    dossier: of('light-sport', null, { agency: { ...repairman, ratings: [] } }),
    at: soon,
    expect: 'not-met',
  },
  { name: 'by a pilot', dossier: of('light-sport', null, { agency: pilot }), at: soon, expect: 'not-met' },
  {
    name: 'experimental, 12 months recorded, last minute',
    dossier: of('experimental', 12),
    at: '2027-08-01T04:59Z',
    expect: 'met',
  },
  {
    name: 'experimental, 24 months recorded',
    dossier: of('experimental', 24),
    at: '2027-08-01T05:00Z',
    expect: 'met',
    data: { lastGood: '2028-07-31' },
  },
  {
    name: 'experimental, 6 months recorded, the minute after',
    dossier: of('experimental', 6),
    at: '2027-02-01T06:00Z',
    expect: 'not-met',
  },
  {
    name: 'experimental, interval not recorded: there is no default',
    dossier: of('experimental', null),
    at: soon,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  {
    name: 'experimental, limitations not recorded',
    dossier: dossierOf(of('experimental', 12), { configuration: { authority: null as never } }),
    at: soon,
    expect: 'cannot-tell',
  },
  {
    name: 'experimental, by a repairman: for which aircraft is not recorded',
    dossier: of('experimental', 12, { agency: { ...repairman, ratings: [] } }),
    at: soon,
    expect: 'cannot-tell',
  },
  { name: 'experimental, nothing recorded', dossier: of('experimental', 12, null), at: soon, expect: 'cannot-tell' },
  { name: 'standard', dossier: of('standard', null, null), at: soon, expect: 'not-applicable', message: 'not-asked' },
  {
    name: 'standard, inspected all the same: nothing falls due',
    dossier: of('standard', 12),
    at: soon,
    expect: 'not-applicable',
    due: [],
  },
  {
    name: 'what falls due of a light-sport aircraft',
    dossier: of('light-sport', 6),
    at: soon,
    expect: 'met',
    due: [{ what: 'condition-inspection', lastGoodDay: '2027-07-31' }],
  },
  { name: 'certificate not recorded, inspected', dossier: of(null, 12), at: soon, expect: 'met' },
  { name: 'certificate not recorded, no interval', dossier: of(null, null), at: soon, expect: 'cannot-tell' },
  {
    name: 'certificate not recorded, lapsed for one of both texts',
    dossier: of(null, 24),
    at: '2027-08-01T05:00Z',
    expect: 'cannot-tell',
  },
]);
