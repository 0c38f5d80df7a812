import { sparesFor } from '../../calculations/spare-fuses.js';
import type { Circuit } from '../../dossier/installation.js';
import { nightSparesOfEach } from '../../facts/equipment.js';
import { spareFuseShare } from '../../facts/old-part-23.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, met, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { missingOf } from '../circuits.js';
import { advice } from '../effects.js';
import { itemFitted } from '../equipment-items.js';
import { findOut, listed } from '../gaps.js';
import { defineRule } from '../rule.js';

const takes = `The recorded circuits take {spares}; by night it is a set of all, or ${nightSparesOfEach.value} of each.`;

/** How many spares it takes, counted from the circuits. That they are aboard by night is `night-equipment`, which stops the flight. */
export const spareFuses = defineRule(
  {
    id: 'spare-fuses',
    topic: 'equipment',
    asks: 'Spare fuses of each rating in use are aboard: half as many as are in use and at least one; by night a set of all, or three of each.',
    binds:
      'Aircraft with a recorded circuit that a fuse guards, as advice: which of the fuses can be replaced in flight, and how many spares lie aboard, nobody records.',
    sources: [spareFuseShare.source, nightSparesOfEach.source],
    messages: {
      aboard: `Spare fuses were seen aboard. ${takes}`,
      absent: `No spare fuses are aboard. ${takes}`,
      unclear: `Whether the spare fuses that it takes are aboard cannot be told. ${takes}`,
    },
    establishes: [],
  },
  (facts) => {
    const fuses = facts.dossier.configuration.electrical?.circuits.filter((each) => each.protector === 'fuse') ?? [];
    if (fuses.length === 0) return [];
    const clause = allOf('spare-fuses', [aboard(facts), ratingsKnown(fuses)], 'cannot-tell');
    return [
      {
        subject: 'aircraft',
        clause,
        messages: { met: 'aboard', 'not-met': 'absent', 'cannot-tell': 'unclear', 'not-applicable': 'unclear' },
        data: { spares: sparesOf(fuses) },
        effects: advice,
        remedies: [
          { kind: 'do', change: 'equipment.state', subject: 'aircraft', facts: [] },
          ...findOut(clause, 'equipment.state', 'aircraft'),
        ],
      },
    ];
  },
);

/** Who recorded that none are asked for did not know of these fuses, or none of them can be replaced in flight. */
function aboard(facts: Facts): Clause {
  const { source } = nightSparesOfEach;
  const state = facts.dossier.configuration.equipment.find(({ item }) => item === 'spare-fuses')?.state;
  return state === 'not-required'
    ? unknown('spare-fuses-recorded-as-not-required', ['configuration.equipment.spare-fuses'], { source })
    : itemFitted(facts, 'spare-fuses', source);
}

function ratingsKnown(fuses: readonly Circuit[]): Clause {
  const { source } = spareFuseShare;
  const missing = fuses.flatMap((each) => missingOf(each, 'ratingA'));
  return missing.length === 0 ? met('ratings-known', { source }) : unknown('ratings-known', missing, { source });
}

/** '2 of 5 A, 1 of 10 A'; null where no rating is recorded. */
function sparesOf(fuses: readonly Circuit[]): string | null {
  const ratings = fuses.flatMap(({ ratingA }) => (ratingA === null ? [] : [ratingA]));
  const each = [...new Set(ratings)].sort((a, b) => a - b);
  return listed(
    each.map((rating) => `${sparesFor(ratings.filter((other) => other === rating).length)} of ${rating} A`),
  );
}
