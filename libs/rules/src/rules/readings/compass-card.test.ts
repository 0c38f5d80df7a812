import { dossierOf } from '../../../testing/dossiers.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { Dossier } from '../../dossier/dossier.js';
import type { Placard } from '../../dossier/installation.js';
import { compassCard } from './compass-card.js';

type Basis = NonNullable<Dossier['configuration']['aircraft']['basis']>;
const at = '2026-03-02T14:00Z';
const car3 = { code: 'car-3', amendment: null } as const;
const cardOf = (inView: boolean | null, part: Partial<Placard> = {}): Placard => ({
  id: 'card',
  kind: 'compass',
  unitId: null,
  inView,
  text: 'For steer, radios on',
  ...part,
});
const of = (
  placards: readonly Placard[],
  {
    basis = car3,
    stated = true,
    kind = 'airplane' as const,
  }: { basis?: Basis | null; stated?: boolean; kind?: 'airplane' | 'helicopter' } = {},
) =>
  dossierOf(
    { configuration: { aircraft: { basis: basis as never, kind }, placards } },
    {
      status: {
        completeness: stated ? [{ list: 'placards', stated: { asOf: '2026-02-01', by: 'R. Tamsin' } }] : [],
      },
    },
  );

// Old 23.1547 and 27.1547: on or near the compass.
testRule(compassCard, [
  { name: 'a card in view', dossier: of([cardOf(true)]), at, expect: 'met', message: 'fitted' },
  {
    name: 'a helicopter’s',
    dossier: of([cardOf(true)], { basis: { code: 'part-27', amendment: null }, kind: 'helicopter' }),
    at,
    expect: 'met',
  },
  { name: 'a card out of view', dossier: of([cardOf(false)]), at, expect: 'not-met', message: 'missing' },
  {
    name: 'one out of view, another in view',
    dossier: of([cardOf(false), cardOf(true, { id: 'card2' })]),
    at,
    expect: 'met',
  },
  {
    name: 'whether it is in view is not recorded',
    dossier: of([cardOf(null)]),
    at,
    expect: 'cannot-tell',
    message: 'unclear',
  },
  { name: 'none among all placards', dossier: of([cardOf(true, { kind: 'loading' })]), at, expect: 'not-met' },
  { name: 'none recorded, and nobody stated all', dossier: of([], { stated: false }), at, expect: 'cannot-tell' },
  {
    name: 'part 23 as of amendment 64',
    dossier: of([], { basis: { code: 'part-23', amendment: 64 } }),
    at,
    expect: 'not-applicable',
    message: 'none',
  },
  { name: 'basis not recorded', dossier: of([], { basis: null }), at, expect: 'cannot-tell' },
]);
