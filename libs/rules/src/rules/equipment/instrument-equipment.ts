import { instrumentItems } from '../../facts/equipment.js';
import { allOf, anyOf } from '../../verdict/build.js';
import { cfr } from '../cite.js';
import { itemFitted, itemMessages, itemsDraft, needsClause } from '../equipment-items.js';
import { defineRule } from '../rule.js';

const turn = cfr('91.205(d)(3)');

/**
 * A third attitude instrument system stands in for the rate-of-turn indicator. It is recorded as fitted only where it is usable
 * through 360 degrees of pitch and roll (airplane), or 80 degrees of pitch and 120 of roll (rotorcraft).
 */
export const instrumentEquipment = defineRule(
  {
    id: 'instrument-equipment',
    topic: 'equipment',
    asks: 'The instruments for flight under instrument rules are fitted: 91.205(d)(3) to (9).',
    binds:
      'Powered aircraft with a standard certificate under instrument rules; radio and navigation are judged apart.',
    sources: [cfr('91.205(a), (d)')],
    messages: { fitted: 'What 91.205(d) asks for under instrument rules is fitted.', ...itemMessages },
    establishes: ['ifr-aircraft'],
  },
  (facts) => {
    const others = instrumentItems.filter((each) => each.item !== 'rate-of-turn');
    const turnOrThird = anyOf(
      'rate-of-turn-or-third-attitude',
      [itemFitted(facts, 'rate-of-turn', turn), itemFitted(facts, 'third-attitude', turn)],
      'cannot-tell',
    );
    const items = allOf('instrument-items', [needsClause(facts, 'items', others), turnOrThird], 'cannot-tell');
    return [itemsDraft(facts, items, 'ifr-aircraft')];
  },
);
