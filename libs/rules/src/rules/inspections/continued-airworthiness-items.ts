import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { advice } from '../effects.js';
import { itemDraft, itemMessages } from '../recurring-items.js';
import { defineRule } from '../rule.js';
import { statedComplete } from '../stated-complete.js';

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
    statedComplete(facts, 'recurring', limitations),
  ],
);
