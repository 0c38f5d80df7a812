import type { Draft } from '../../verdict/result.js';
import { met, unknown } from '../../verdict/build.js';
import { cfr } from '../cite.js';
import { advice } from '../effects.js';
import { findOut } from '../gaps.js';
import type { Facts } from '../../graph/facts.js';
import { itemDraft, itemMessages } from '../recurring-items.js';
import { defineRule } from '../rule.js';

const limitations = cfr('91.403(c), 43.16');
/** That other intervals of the instructions do not bind a private operator by themselves was not read. */
const instructions = cfr('91.403(c)', 'from-memory');

export const continuedAirworthinessItems = defineRule(
  {
    id: 'continued-airworthiness-items',
    topic: 'inspections',
    asks: 'Every item of an airworthiness limitations section is done within its interval; other items of the instructions for continued airworthiness are watched.',
    binds: 'Every aircraft with such items; items outside the limitations section are advice to a private operator.',
    sources: [limitations, instructions],
    messages: {
      ...itemMessages,
      stated: 'The list of recurring items was stated complete as of {asOf}.',
      unstated: 'Nobody stated that the list of recurring items is complete.',
    },
    establishes: [],
  },
  (facts) => [
    ...facts.dossier.status.recurring.flatMap((item): Draft[] =>
      item.origin === 'own'
        ? []
        : [
            item.origin === 'airworthiness-limitation'
              ? itemDraft(facts, item, limitations, [{ stops: 'capability', capability: 'fly' }])
              : itemDraft(facts, item, instructions, advice),
          ],
    ),
    list(facts),
  ],
);

/** A limitation that nobody listed binds all the same. */
function list(facts: Facts): Draft {
  const stated = facts.complete('recurring');
  const clause =
    stated === null
      ? unknown('list-complete', ['status.completeness.recurring'], { source: limitations })
      : met('list-complete', { source: limitations });
  return {
    subject: 'recurring-list',
    clause,
    messages: { met: 'stated', 'not-met': 'unstated', 'cannot-tell': 'unstated', 'not-applicable': 'stated' },
    data: { item: 'Recurring items', asOf: stated?.asOf ?? null },
    effects: [{ stops: 'capability', capability: 'fly' }],
    remedies: findOut(clause, 'completeness.state', 'recurring'),
  };
}
