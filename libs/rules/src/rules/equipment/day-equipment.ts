import { dayItems } from '../../facts/equipment.js';
import { cfr, reading } from '../cite.js';
import { itemMessages, itemsDrafts } from '../equipment-items.js';
import { defineRule } from '../rule.js';

export const dayEquipment = defineRule(
  {
    id: 'day-equipment',
    topic: 'equipment',
    asks: 'The instruments and equipment for visual flight by day are fitted: 91.205(b).',
    binds:
      'Powered aircraft with a standard certificate, on every flight; some items only by build, or over water for hire.',
    sources: [cfr('91.205(a), (b)'), reading('14 CFR 91.205', '(b)(12): what counts as hire')],
    messages: { fitted: 'What 91.205(b) asks for by day is fitted.', ...itemMessages },
    establishes: [],
  },
  (facts) => itemsDrafts(facts, 'day-items', dayItems, 'fly'),
);
