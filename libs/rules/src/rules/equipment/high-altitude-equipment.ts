import { highAltitudeFromFt, highAltitudeItems } from '../../facts/equipment.js';
import { anyOf, flight, implies, ref } from '../../verdict/build.js';
import { cfr } from '../cite.js';
import { itemMessages, itemsDraft, needsClause } from '../equipment-items.js';
import { defineRule } from '../rule.js';

/** Where GNSS navigation holds, VOR is not what (d)(2) asks for and a suitable RNAV system is there. */
export const highAltitudeEquipment = defineRule(
  {
    id: 'high-altitude-equipment',
    topic: 'equipment',
    asks: 'At and above 24,000 ft, where VOR is the navigation used, approved DME or a suitable RNAV system is fitted.',
    binds: 'Powered aircraft with a standard certificate under instrument rules at or above 24,000 ft.',
    sources: [cfr('91.205(a), (e)')],
    messages: { fitted: 'DME or a suitable RNAV system is there.', ...itemMessages },
    establishes: [],
  },
  (facts) => {
    const high = flight(
      'at-or-above-24000-ft',
      { topFt: highAltitudeFromFt.value },
      { source: highAltitudeFromFt.source },
    );
    const either = anyOf(
      'dme-or-rnav',
      [ref('nav-gnss'), needsClause(facts, 'items', highAltitudeItems)],
      'cannot-tell',
    );
    return [itemsDraft(facts, implies(high, either), 'ifr-aircraft')];
  },
);
