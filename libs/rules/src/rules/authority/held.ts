import { allOf, met, within } from '../../verdict/build.js';
import { practice } from '../cite.js';
import { defineRule } from '../rule.js';

const house = practice('the shop or operator holds the aircraft');

export const held = defineRule(
  {
    id: 'held',
    topic: 'authority',
    asks: 'No hold is placed on the aircraft.',
    binds: 'Every aircraft.',
    sources: [house],
    messages: { free: 'No hold is placed.', held: 'The aircraft is held: {reason} ({by}).' },
    establishes: [],
  },
  (facts) => {
    const { holds } = facts.dossier.status;
    // Outside its region a hold does nothing; inside it stops every flight.
    const clauses = holds.map((each) =>
      within(
        `hold-${each.id}`,
        { from: each.from, ...(each.until === null ? {} : { before: each.until }) },
        { source: house },
        'not-met',
        'met',
      ),
    );
    const last = holds.at(-1);
    return [
      {
        subject: 'aircraft',
        clause: allOf(
          'no-hold',
          clauses.length > 0 ? clauses : [met('no-hold-recorded', { source: house })],
          'cannot-tell',
        ),
        messages: { met: 'free', 'not-met': 'held', 'cannot-tell': 'held', 'not-applicable': 'free' },
        data: { reason: last?.reason ?? null, by: last?.by ?? null },
        effects: [{ stops: 'capability', capability: 'fly' }],
        remedies: [{ kind: 'do', change: 'hold.lift', subject: last?.id ?? 'aircraft', facts: [] }],
      },
    ];
  },
);
