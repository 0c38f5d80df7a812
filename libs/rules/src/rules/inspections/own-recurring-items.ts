import { advice } from '../effects.js';
import { itemDraft, itemMessages, ownPractice } from '../recurring-items.js';
import { defineRule } from '../rule.js';

export const ownRecurringItems = defineRule(
  {
    id: 'own-recurring-items',
    topic: 'inspections',
    asks: 'Each recurring item that the owner or the shop set for itself is done within its interval.',
    binds: 'Aircraft with items of their own; it stops nothing.',
    sources: [ownPractice],
    messages: itemMessages,
    establishes: [],
  },
  (facts) =>
    facts.dossier.status.recurring
      .filter((item) => item.origin === 'own')
      .map((item) => itemDraft(facts, item, ownPractice, advice)),
);
