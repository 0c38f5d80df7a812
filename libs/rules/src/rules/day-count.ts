import type { Recurrence } from '../calculations/recurrence.js';
import { housePolicy, stretchesOf } from '../catalogue/policy.js';
import type { Facts } from '../graph/facts.js';
import { addDays } from '../time/calendar.js';
import { startOfDay } from '../time/zones.js';
import { allOf, implies, not } from '../verdict/build.js';
import type { Counted } from './accomplished.js';
import { duringPolicy, policyCounts } from './house-policy.js';
import { recurring } from './recurring.js';
import type { Recurring } from './recurring.js';

/**
 * `recurring` for a number of days whose last one is our reading. A house may count a day less; no policy reaches further than the
 * usual count.
 */
export function countedInDays(
  facts: Facts,
  counted: readonly Counted[],
  count: number,
  asked: Parameters<typeof recurring>[3],
): Recurring {
  const usual = recurring(facts, counted, days(count), asked);
  const stretches = stretchesOf(facts.catalogue.policies, 'day-count', facts.zone).filter(
    ({ policy }) => policy.body.count === 'earlier',
  );
  if (stretches.length === 0 || usual.lastGood === null) return usual;
  const earlier = stretches.map((stretch) => ({
    ...stretch,
    asks: recurring(facts, counted, days(count - 1), { ...asked, source: housePolicy(stretch.policy) }),
  }));
  const lastDay = startOfDay(usual.lastGood, facts.zone);
  const losesIt = earlier.find(({ from, before }) => from <= lastDay && (before === null || lastDay < before));
  return {
    ...(losesIt ? { ...losesIt.asks, lastGood: addDays(usual.lastGood, -1) } : usual),
    clause: allOf(
      'by-the-count-of-its-day',
      [
        implies(
          allOf(
            'the-usual-count',
            stretches.map((each) => not(policyCounts(each))),
            'met',
          ),
          usual.clause,
        ),
        ...earlier.map((each) => duringPolicy(each, each.asks.clause)),
      ],
      'cannot-tell',
    ),
  };
}

function days(count: number): Recurrence {
  return { parts: [{ kind: 'days', count }], combine: 'first', countFrom: 'done', toleranceFor: 'none' };
}
