import { mechanic, recordOf } from '../../../testing/builders.js';
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
const of = (...records: readonly RecordHead[]) => dossierOf({ status: { recurring: [oil], records } });

// Four months from 15 January: good through 15 May, which ends at 0500 UTC in Chicago. Common practice.
testRule(ownRecurringItems, [
  { name: 'the last minute', dossier: of(changed), at: '2026-05-16T04:59Z', expect: 'met', message: 'current' },
  { name: 'the minute after', dossier: of(changed), at: '2026-05-16T05:00Z', expect: 'not-met', message: 'lapsed' },
  { name: 'never entered', dossier: of(), at: '2026-05-01T12:00Z', expect: 'cannot-tell', message: 'unclear' },
  {
    name: 'from the limitations section',
    dossier: dossierOf({ status: { recurring: [{ ...oil, origin: 'airworthiness-limitation' }] } }),
    at: '2026-05-01T12:00Z',
    expect: 'none',
  },
]);
