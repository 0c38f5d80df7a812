import { typeOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
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
const of = (expires: Instant | null) =>
  dossierOf({
    configuration: { units: [unit] },
    status: {
      loads: [
        {
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
        },
      ],
    },
  });
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
    dossier: dossierOf({ configuration: { units: [unit] } }),
    types,
    subject,
    at: '2026-03-19T00:00Z',
    expect: 'cannot-tell',
  },
  {
    name: 'navigation data are another rule',
    dossier: of(null),
    types,
    subject: 'gps1:navigation',
    at: '2026-03-19T00:00Z',
    expect: 'none',
  },
]);
