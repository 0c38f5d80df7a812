import { nightItems } from '../../facts/equipment.js';
import { cfr, reading } from '../cite.js';
import { itemMessages, itemsDrafts } from '../equipment-items.js';
import { defineRule } from '../rule.js';

/** On top of the day's items. A landing light is asked for only where the flight is for hire. */
export const nightEquipment = defineRule(
  {
    id: 'night-equipment',
    topic: 'equipment',
    asks: 'The lights and electrical equipment for flight at night are fitted: 91.205(c).',
    binds: 'Powered aircraft with a standard certificate at night; the landing light only on flights for hire.',
    sources: [cfr('91.205(a), (c)'), reading('14 CFR 91.205', '(c)(4): what counts as hire')],
    messages: { fitted: 'What 91.205(c) asks for at night is fitted.', ...itemMessages },
    establishes: ['night'],
  },
  (facts) => itemsDrafts(facts, 'night-items', nightItems, 'night'),
);
