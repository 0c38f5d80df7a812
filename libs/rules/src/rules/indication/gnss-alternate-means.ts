import type { UnitFacts } from '../../graph/units.js';
import { needsOtherMeans } from '../../facts/gnss.js';
import { allOf, fact, implies, met, ref } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { reading } from '../cite.js';
import { lostThrough } from '../effects.js';
import { asksForOtherMeans, isNavigationUnit } from '../gnss-authorisation.js';
import { defineRule } from '../rule.js';

const operational = reading(
  'AIM 1-1-17 b.2',
  'another approved means, installed and operational: a VOR receiver with its check current',
);

/** One statement a satellite unit. The other means is a capability, so that whatever takes VOR away takes this away as well. */
export const gnssAlternateMeans = defineRule(
  {
    id: 'gnss-alternate-means',
    topic: 'indication',
    asks: 'Another approved means of navigation is fitted and works, where the unit may not be the only one.',
    binds: 'TSO-C129 and C196 units under IFR; C145 and C146 units need none inside coverage.',
    sources: [needsOtherMeans.source, operational],
    messages: {
      backed: '{unit} has VOR beside it.',
      alone: '{unit} may not be the only means of navigation, and VOR is lost.',
      unclear: 'Whether {unit} needs another means, or has it, cannot be told.',
      sufficient: '{unit} may be the only means of navigation inside coverage.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss') && (each.type === null || isNavigationUnit(each.type)))
      .map((each) => ({
        subject: each.id,
        clause: implies(
          asks(each),
          allOf('another-means-works', [met('vor-stands-in', { source: operational }), ref('nav-vor')], 'cannot-tell'),
        ),
        messages: { met: 'backed', 'not-met': 'alone', 'cannot-tell': 'unclear', 'not-applicable': 'sufficient' },
        data: { unit: each.unit.name },
        effects: lostThrough(each.id, ['nav-gnss']),
        remedies: [{ kind: 'do' as const, change: 'record.add', subject: 'vor-check', facts: [] }],
      })),
);

function asks(each: UnitFacts): Clause {
  return fact(asksForOtherMeans(each.type), 'class-asks-for-another-means', `catalogue.${each.id}.authorisations`, {
    source: needsOtherMeans.source,
  });
}
