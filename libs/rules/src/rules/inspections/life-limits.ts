import type { LastDone, Recurrence } from '../../calculations/recurrence.js';
import { nextDue } from '../../calculations/recurrence.js';
import type { LifeLimit } from '../../dossier/upkeep.js';
import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft, Due } from '../../verdict/result.js';
import { cfr, maker } from '../cite.js';
import { dueAt, dueWords, untilDue } from '../due-point.js';
import { advice } from '../effects.js';
import { findOut } from '../gaps.js';
import { dueOf, inInterval, intervalParts, partWords } from '../in-interval.js';
import { defineRule } from '../rule.js';
import { statedComplete } from '../stated-complete.js';

const source = cfr('91.403(c), 43.16');

/**
 * A life runs on the recurrence engine, once, from where it began; a point that somebody stated beside it holds too: the earlier ends it.
 * A limit outside the limitations section is advice.
 */
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
  const path = `status.lifeLimits.${limit.id}`;
  const from = limit.document === null ? source : maker(limit.document.title, `life of ${limit.name}`);
  const points = [byLife(facts, limit, from), byStatement(facts, limit, from)].filter((each) => each !== null);
  const life =
    points.length === 0
      ? unknown('life-recorded', [`${path}.life`, `${path}.retireBy`], { source: from })
      : allOf(
          'within-life',
          points.map((each) => each.clause),
          'cannot-tell',
        );
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
    data: { part: limit.name, retire: points.map((each) => each.words).join(' or ') || 'not recorded' },
    effects: limit.mandatory === false ? advice : [{ stops: 'capability', capability: 'fly' }],
    due: points.flatMap((each) => each.due),
    remedies: [
      { kind: 'do', change: 'life-limit.end', subject: limit.id, facts: [] },
      ...findOut(clause, 'life-limit.set', limit.id),
    ],
  };
}

interface Point {
  readonly clause: Clause;
  readonly due: readonly Due[];
  readonly words: string;
}

/** Hours and landings count from what the part had behind it when it was fitted. */
function byLife(facts: Facts, limit: LifeLimit, source: SourceRef): Point | null {
  const { life } = limit;
  if (life === null) return null;
  const path = `status.lifeLimits.${limit.id}.life`;
  const parts = intervalParts(life.parts);
  if (parts === null)
    return {
      clause: unknown('meter-of-life-recorded', [`${path}.parts`], { source }),
      due: [],
      words: 'hours not recorded',
    };
  const doneMeters = Object.fromEntries(
    life.meters.flatMap(({ meter, at, used }) => (at === null || used === null ? [] : [[meter, at - used] as const])),
  );
  const recurrence: Recurrence = { parts, combine: life.combine, countFrom: 'done', toleranceFor: 'none' };
  const began: LastDone = { doneDate: life.from, doneMeters };
  const next = nextDue(recurrence, began).parts;
  return {
    clause: inInterval(facts, recurrence, began, {
      label: 'within-life',
      missing: (meter) => (meter === null ? `${path}.from` : `${path}.meters`),
      extra: { source },
    }),
    due: dueOf(facts, limit.name, next, life.combine),
    words: next.map(partWords).join(' or '),
  };
}

function byStatement(facts: Facts, { id, name, retireBy }: LifeLimit, source: SourceRef): Point | null {
  if (retireBy === null) return null;
  return {
    clause: untilDue(facts, retireBy, `status.lifeLimits.${id}.retireBy`, source),
    due: [dueAt(facts, name, retireBy)],
    words: dueWords(retireBy),
  };
}
