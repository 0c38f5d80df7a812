import { approvalOf, recordOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { InstallationApproval, InstalledUnit } from '../../dossier/installation.js';
import type { RecordHead } from '../../dossier/status.js';
import { datesInOrder } from './dates-in-order.js';

const at = '2026-03-02T14:00Z';
const unit = (
  approval: Partial<InstallationApproval> | null,
  part: Partial<InstalledUnit> = {},
  records: readonly RecordHead[] = [],
) =>
  dossierOf(
    {
      configuration: {
        units: [
          unitOf({
            id: 'gps1',
            functions: ['gnss'],
            approval: approval === null ? null : approvalOf(approval),
            ...part,
          }),
        ],
      },
    },
    { status: { records } },
  );
const released = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'release-entry', subjects: ['gps1'], on, ...part });
const early = { approvedOn: '2024-01-10', releasedOn: '2024-01-09' };
const fitted = (date: string) => ({ fitted: { date, at: null } });

// Data approved, then the release: the day before, the day itself, the day after. Common practice, and what 43.5 and 43.7 lead to.
testRule(datesInOrder, [
  {
    name: 'released the day before the approval',
    dossier: unit(early),
    at,
    expect: 'not-met',
    message: 'too-early',
    data: { approvedOn: '2024-01-10' },
  },
  {
    name: 'released on the day of the approval',
    dossier: unit({ approvedOn: '2024-01-10', releasedOn: '2024-01-10' }),
    at,
    expect: 'met',
    message: 'in-order',
  },
  {
    name: 'released the day after the approval',
    dossier: unit({ approvedOn: '2024-01-10', releasedOn: '2024-01-11' }),
    at,
    expect: 'met',
  },
  {
    name: 'released too early, and again on the day of the approval',
    dossier: unit(early, {}, [released('2024-01-10')]),
    at,
    expect: 'met',
  },
  {
    name: 'released too early twice',
    dossier: unit(early, {}, [released('2024-01-08')]),
    at,
    expect: 'not-met',
  },
  {
    name: 'released too early, the second entry not seen',
    dossier: unit(early, {}, [released('2024-01-11', { evidence: 'reported' })]),
    at,
    expect: 'not-met',
  },
  {
    name: 'release not recorded',
    dossier: unit({ releasedOn: null }),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'approval not dated', dossier: unit({ approvedOn: null }), at, expect: 'cannot-tell' },
  {
    name: 'approval not dated, released again since',
    dossier: unit({ approvedOn: null }, {}, [released('2024-03-01')]),
    at,
    expect: 'cannot-tell',
  },
  {
    name: 'a minor alteration waits for no approval',
    dossier: unit({ ...early, basis: 'minor-alteration' }),
    at,
    expect: 'not-applicable',
    message: 'no-data-to-wait-for',
  },
  { name: 'no papers, no order to judge', dossier: unit(null), at, expect: 'none' },

  // The work itself: advice.
  {
    name: 'fitted the day before the approval',
    dossier: unit({}, fitted('2024-01-09')),
    at,
    subject: 'gps1:work',
    expect: 'not-met',
    message: 'work-too-early',
    data: { fittedOn: '2024-01-09', approvedOn: '2024-01-10' },
  },
  {
    name: 'fitted on the day of the approval',
    dossier: unit({}, fitted('2024-01-10')),
    at,
    subject: 'gps1:work',
    expect: 'met',
    message: 'work-in-order',
  },
  { name: 'fitted the day after', dossier: unit({}, fitted('2024-01-11')), at, subject: 'gps1:work', expect: 'met' },
  {
    name: 'fitted before the approval, which a minor alteration does not wait for',
    dossier: unit({ basis: 'minor-alteration' }, fitted('2024-01-09')),
    at,
    subject: 'gps1:work',
    expect: 'none',
  },
  {
    name: 'fitted, approval not dated',
    dossier: unit({ approvedOn: null }, fitted('2024-01-09')),
    at,
    subject: 'gps1:work',
    expect: 'none',
  },
  // The release after the work: fitted on 10 January.
  {
    name: 'released the day before the work',
    dossier: unit({ approvedOn: '2024-01-02', releasedOn: '2024-01-09' }, fitted('2024-01-10')),
    at,
    subject: 'gps1:released',
    expect: 'not-met',
    message: 'released-before-work',
    data: { fittedOn: '2024-01-10', releasedOn: '2024-01-09' },
  },
  {
    name: 'released on the day of the work',
    dossier: unit({ approvedOn: '2024-01-02', releasedOn: '2024-01-10' }, fitted('2024-01-10')),
    at,
    subject: 'gps1:released',
    expect: 'met',
    message: 'released-after-work',
  },
  {
    name: 'released the day after the work',
    dossier: unit({ approvedOn: '2024-01-02', releasedOn: '2024-01-11' }, fitted('2024-01-10')),
    at,
    subject: 'gps1:released',
    expect: 'met',
  },
  {
    name: 'released before the work of a minor alteration',
    dossier: unit({ ...early, basis: 'minor-alteration' }, fitted('2024-01-10')),
    at,
    subject: 'gps1:released',
    expect: 'not-met',
  },
  {
    name: 'released before the work, and by an entry seen on its day',
    dossier: unit({ approvedOn: '2024-01-02', releasedOn: '2024-01-09' }, fitted('2024-01-10'), [
      released('2024-01-10'),
    ]),
    at,
    subject: 'gps1:released',
    expect: 'met',
    data: { releasedOn: '2024-01-10' },
  },
  {
    name: 'released before the work, the later entry not seen',
    dossier: unit({ approvedOn: '2024-01-02', releasedOn: '2024-01-09' }, fitted('2024-01-10'), [
      released('2024-01-10', { evidence: 'reported' }),
    ]),
    at,
    subject: 'gps1:released',
    expect: 'not-met',
  },
  {
    name: 'fitted, no release recorded',
    dossier: unit({ releasedOn: null }, fitted('2024-01-10')),
    at,
    subject: 'gps1:released',
    expect: 'none',
  },
  {
    name: 'released, day of the work not recorded',
    dossier: unit({ releasedOn: '2024-01-09' }, { serial: '8' }),
    at,
    subject: 'gps1:released',
    expect: 'none',
  },
  { name: 'day of fitting not recorded', dossier: unit({}, { serial: '7' }), at, subject: 'gps1:work', expect: 'none' },
]);
