import type { LifeLimit } from '../../dossier/upkeep.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, met, unknown, within } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { cfr, maker } from '../cite.js';
import { advice } from '../effects.js';
import { findOut } from '../gaps.js';
import { endOfDay } from '../periodic.js';
import { defineRule } from '../rule.js';

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
      within: '{part} is within its life; retire by {date} or {at} h.',
      beyond: '{part} is beyond its life: retire by {date} or {at} h.',
      unclear: '{part}: whether its life is over, or binds, cannot be told from the record.',
      stated: 'The list of life limits was stated complete as of {asOf}.',
      unstated: 'Nobody stated that the list of life-limited parts is complete.',
    },
    establishes: [],
  },
  (facts) => [...facts.dossier.status.lifeLimits.map((each) => ofPart(facts, each)), list(facts)],
);

function ofPart(facts: Facts, limit: LifeLimit): Draft {
  const { by, date, meter, at } = limit.retireBy;
  const path = `status.lifeLimits.${limit.id}.retireBy`;
  const extra = { source: limit.document === null ? source : maker(limit.document.title, `life of ${limit.name}`) };
  const day =
    date === null
      ? unknown('day-of-retirement-recorded', [`${path}.date`], extra)
      : within('before-day-of-retirement', { before: endOfDay(facts, date) }, extra);
  const hours =
    meter === null || at === null
      ? unknown('hours-of-retirement-recorded', [meter === null ? `${path}.meter` : `${path}.at`], extra)
      : within('before-hours-of-retirement', { atMost: { [meter]: at } }, extra);
  const life = allOf(
    'within-life',
    [...(by === 'meter' ? [] : [day]), ...(by === 'date' ? [] : [hours])],
    'cannot-tell',
  );
  // Past a life of which nobody knows whether it binds, nobody can tell.
  const clause =
    limit.mandatory === null
      ? anyOf(
          'within-life-or-not-binding',
          [life, unknown('binding', [`status.lifeLimits.${limit.id}.mandatory`], { source })],
          'cannot-tell',
        )
      : life;
  return {
    subject: limit.id,
    clause,
    messages: { met: 'within', 'not-met': 'beyond', 'cannot-tell': 'unclear', 'not-applicable': 'within' },
    data: { part: limit.name, date: date ?? 'no day', at: at === null ? 'no' : at / 100 },
    effects: limit.mandatory === false ? advice : [{ stops: 'capability', capability: 'fly' }],
    due: [
      {
        what: limit.name,
        ...(date === null ? {} : { lastGoodDay: date, lapses: endOfDay(facts, date) }),
        ...(meter === null || at === null ? {} : { meter, at }),
        combine: 'first' as const,
      },
    ].filter((each) => 'lastGoodDay' in each || 'at' in each),
    remedies: [
      { kind: 'do', change: 'life-limit.end', subject: limit.id, facts: [] },
      ...findOut(clause, 'life-limit.set', limit.id),
    ],
  };
}

/** A life that nobody listed ends all the same. */
function list(facts: Facts): Draft {
  const stated = facts.complete('life-limits');
  const clause =
    stated === null
      ? unknown('list-complete', ['status.completeness.life-limits'], { source })
      : met('list-complete', { source });
  return {
    subject: 'life-limit-list',
    clause,
    messages: { met: 'stated', 'not-met': 'unstated', 'cannot-tell': 'unstated', 'not-applicable': 'stated' },
    data: { part: 'Life limits', date: null, at: null, asOf: stated?.asOf ?? null },
    effects: [{ stops: 'capability', capability: 'fly' }],
    remedies: findOut(clause, 'completeness.state', 'life-limits'),
  };
}
