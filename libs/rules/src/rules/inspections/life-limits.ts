import type { LifeLimit } from '../../dossier/upkeep.js';
import type { Facts } from '../../graph/facts.js';
import { anyOf, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr, maker } from '../cite.js';
import { dueAt, dueWords, untilDue } from '../due-point.js';
import { advice } from '../effects.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';
import { statedComplete } from '../stated-complete.js';

const source = cfr('91.403(c), 43.16');

/** Good through the day and the hour stated; the earlier of both. A limit outside the limitations section is advice. */
export const lifeLimits = defineRule(
  {
    id: 'life-limits',
    topic: 'inspections',
    asks: 'No part is in use beyond the life that its airworthiness limitations give it.',
    binds: 'Every aircraft with life-limited parts; lives outside a limitations section are advice.',
    sources: [source],
    messages: {
      within: '{part} is within its life; retire by {retire}.',
      beyond: '{part} is beyond its life: retire by {retire}.',
      unclear: '{part}: whether its life is over, or binds, cannot be told from the record.',
      stated: 'The list of life limits was stated complete as of {asOf}.',
      unstated: 'Nobody stated that the list of life-limited parts is complete.',
    },
    establishes: [],
  },
  (facts) => [
    ...facts.dossier.status.lifeLimits.map((each) => ofPart(facts, each)),
    statedComplete(facts, 'life-limits', source),
  ],
);

function ofPart(facts: Facts, limit: LifeLimit): Draft {
  const { retireBy } = limit;
  const path = `status.lifeLimits.${limit.id}`;
  const from = limit.document === null ? source : maker(limit.document.title, `life of ${limit.name}`);
  const life = untilDue(facts, retireBy, `${path}.retireBy`, from);
  // Past a life of which nobody knows whether it binds, nobody can tell.
  const clause =
    limit.mandatory === null
      ? anyOf(
          'within-life-or-not-binding',
          [life, unknown('binding', [`${path}.mandatory`], { source })],
          'cannot-tell',
        )
      : life;
  return {
    subject: limit.id,
    clause,
    messages: { met: 'within', 'not-met': 'beyond', 'cannot-tell': 'unclear', 'not-applicable': 'within' },
    data: { part: limit.name, retire: dueWords(retireBy) },
    effects: limit.mandatory === false ? advice : [{ stops: 'capability', capability: 'fly' }],
    due: [dueAt(facts, limit.name, retireBy)],
    remedies: [
      { kind: 'do', change: 'life-limit.end', subject: limit.id, facts: [] },
      ...findOut(clause, 'life-limit.set', limit.id),
    ],
  };
}
