import { deferralOf, inspector, mechanic, recordOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Deferral, RecordHead } from '../../dossier/status.js';
import { deferralDue } from './deferral-due.js';

const case_ = (
  name: string,
  records: readonly RecordHead[],
  part: Partial<Deferral> | null = {},
  kind: 'inoperative-item' | 'wear' = 'inoperative-item',
) => ({
  name,
  dossier: dossierOf({
    status: {
      records,
      defects: [
        {
          id: 'd1',
          kind,
          subject: 'clock',
          text: 'Clock stopped.',
          raised: { date: '2026-01-10', at: null },
          decidedBy: mechanic,
          deferral: part === null ? null : deferralOf({ on: '2026-01-15', ...part }),
        },
      ],
    },
  }),
  at: '2026-06-01T12:00Z',
});
const annual = (on: string, part: Partial<RecordHead> = {}) =>
  recordOf({ kind: 'annual-inspection', on, outcome: 'approved', agency: inspector, ...part });

// 14 CFR 91.405(c): repaired, replaced, removed or inspected at the next required inspection.
testRule(deferralDue, [
  {
    ...case_('no inspection since', [annual('2026-01-14')]),
    expect: 'met',
    message: 'looked',
    data: { item: 'clock', lookedAt: '2026-01-15', inspected: null },
  },
  { ...case_('deferred on the day of the inspection', [annual('2026-01-15')]), expect: 'met' },
  {
    ...case_('inspection the day after the deferral', [annual('2026-01-16')]),
    expect: 'not-met',
    message: 'due',
    data: { inspected: '2026-01-16' },
  },
  {
    ...case_('looked at again at that inspection', [annual('2026-01-16')], { reinspectedOn: '2026-01-16' }),
    expect: 'met',
  },
  {
    ...case_('looked at the day before that inspection', [annual('2026-01-16')], { reinspectedOn: '2026-01-15' }),
    expect: 'not-met',
  },
  {
    ...case_(
      'looked at at the annual, not at the 100-hour inspection after it',
      [
        annual('2026-01-16'),
        recordOf({ kind: 'hundred-hour-inspection', on: '2026-04-02', outcome: 'approved', agency: mechanic }),
      ],
      { reinspectedOn: '2026-01-16' },
    ),
    expect: 'not-met',
    data: { inspected: '2026-04-02' },
  },
  {
    ...case_('an inspection that is only reported', [annual('2026-01-16', { evidence: 'reported' })]),
    expect: 'not-met',
  },
  {
    ...case_('an inspection that ended disapproved', [annual('2026-01-16', { outcome: 'disapproved' })]),
    expect: 'not-met',
  },
  {
    ...case_('a test is not a required inspection of the aircraft', [
      recordOf({ kind: 'transponder-test', on: '2026-04-02', subjects: ['xp1'] }),
    ]),
    expect: 'met',
  },
  { ...case_('deferred by a minimum equipment list', [annual('2026-01-16')], { route: 'mel' }), expect: 'none' },
  { ...case_('not deferred', [annual('2026-01-16')], null), expect: 'none' },
  { ...case_('wear', [annual('2026-01-16')], {}, 'wear'), expect: 'none' },
  {
    ...case_('two inspections since: the newest is named', [annual('2026-02-16'), annual('2026-03-16')]),
    expect: 'not-met',
    data: { inspected: '2026-03-16' },
  },
  {
    ...case_('two kinds of inspection since, the newest of another kind', [
      annual('2026-02-16'),
      annual('2026-03-16', { kind: 'hundred-hour-inspection', id: 'hundred' }),
    ]),
    expect: 'not-met',
    data: { inspected: '2026-03-16' },
  },
  {
    ...case_('looked at before it was deferred: the deferral counts', [annual('2026-01-14')], {
      reinspectedOn: '2026-01-12',
    }),
    expect: 'met',
    data: { lookedAt: '2026-01-15' },
  },
]);
