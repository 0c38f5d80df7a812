import { mechanic, recordOf, timeInService } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { RecordHead } from '../../dossier/status.js';
import type { RecurringItem } from '../../dossier/upkeep.js';
import { ownRecurringItems } from './own-recurring-items.js';

const oil: RecurringItem = {
  id: 'oil',
  name: 'Oil change',
  subject: 'oil',
  origin: 'own',
  document: null,
  parts: [{ kind: 'anniversary-months', count: 4, meter: null, tolerance: null }],
  combine: 'first',
  countFrom: 'done',
  toleranceFor: 'none',
};
const changed = recordOf({ kind: 'own-item', subjects: ['oil'], on: '2026-01-15', agency: mechanic });
/** Fifty hours, an overrun counted into the next fifty. */
const filter: RecurringItem = {
  ...oil,
  id: 'filter',
  name: 'Filter',
  subject: 'filter',
  parts: [{ kind: 'hours', count: 5_000, meter: 'tach', tolerance: null }],
  countFrom: 'earlier',
};
const late = (part: Partial<RecordHead>) =>
  dossierOf({
    status: {
      recurring: [filter],
      records: [
        recordOf({
          kind: 'own-item',
          subjects: ['filter'],
          on: '2026-01-15',
          agency: mechanic,
          meters: [{ meter: 'tach', value: 405_730 }],
          enRoute: true,
          ...part,
        }),
      ],
    },
    meters: {
      ...timeInService,
      readings: { tach: { value: 406_000, asOf: '2026-02-01T20:00Z', by: 'Desk' } },
      utilisation: { perMonth: 1_000, readingGoodForDays: 31 },
    },
  });
const of = (...records: readonly RecordHead[]) => dossierOf({ status: { recurring: [oil], records } });

// Four months from 15 January: good through 15 May, which ends at 0500 UTC in Chicago. Common practice.
testRule(ownRecurringItems, [
  { name: 'the last minute', dossier: of(changed), at: '2026-05-16T04:59Z', expect: 'met', message: 'current' },
  { name: 'the minute after', dossier: of(changed), at: '2026-05-16T05:00Z', expect: 'not-met', message: 'lapsed' },
  { name: 'never entered', dossier: of(), at: '2026-05-01T12:00Z', expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'done late on the way, due at 4,050 h: fifty more from there',
    dossier: late({ dueAt: 405_000 }),
    at: '2026-02-02T12:00Z',
    expect: 'met',
  },
  {
    name: 'done late on the way, the reading is too old',
    dossier: late({ dueAt: 405_000 }),
    at: '2026-03-04T20:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'a newer meter reading' },
  },
  {
    name: 'done late on the way, and no entry says how far',
    dossier: late({ dueAt: null }),
    at: '2026-02-02T12:00Z',
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'when it is due next' },
  },
  {
    name: 'from the limitations section',
    dossier: dossierOf({ status: { recurring: [{ ...oil, origin: 'airworthiness-limitation' }] } }),
    at: '2026-05-01T12:00Z',
    expect: 'none',
  },
]);
