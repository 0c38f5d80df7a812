import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { findOut, missingNames } from '../gaps.js';
import { defineRule } from '../rule.js';

const placard = cfr('91.213(d)(3)(ii), 91.405(d)');
const entry = cfr('91.213(d)(3)(ii), 43.9');

/** What a deactivated unit can no longer do, other rules say; this one asks what the deactivation itself must leave behind. */
export const deactivatedUnits = defineRule(
  {
    id: 'deactivated-units',
    topic: 'defects',
    asks: 'A unit that was deactivated is placarded inoperative, and the deactivation is entered in the maintenance record.',
    binds: 'Every deactivated unit; not units that work or were taken out.',
    sources: [placard, entry],
    messages: {
      secured: '{unit}, deactivated on {since}: placarded and entered.',
      bare: '{unit}, deactivated on {since}: the placard or the entry is missing.',
      unclear: '{unit}, deactivated on {since}: not recorded: {unrecorded}.',
    },
    establishes: [],
  },
  (facts) => [...facts.units.values()].flatMap(ofUnit),
);

function ofUnit({ id, unit }: UnitFacts): readonly Draft[] {
  const { deactivated } = unit;
  if (deactivated === null) return [];
  const path = `configuration.units.${id}.deactivated`;
  const clause = allOf(
    'deactivation-secured',
    [
      fact(deactivated.placarded, 'placarded-inoperative', `${path}.placarded`, { source: placard }),
      fact(deactivated.recorded, 'deactivation-entered', `${path}.recorded`, { source: entry }),
    ],
    'cannot-tell',
  );
  const ways = ['unit.deactivate', 'unit.reactivate', 'unit.remove'];
  return [
    {
      subject: id,
      clause,
      messages: { met: 'secured', 'not-met': 'bare', 'cannot-tell': 'unclear', 'not-applicable': 'secured' },
      data: { unit: unit.name, since: deactivated.since.date, unrecorded: missingNames(clause) ?? 'none' },
      effects: [{ stops: 'capability', capability: 'fly' }],
      remedies: [
        ...ways.map((change) => ({ kind: 'do' as const, change, subject: id, facts: [] })),
        ...findOut(clause, 'unit.deactivate', id),
      ],
    },
  ];
}
