import { lineOfSightBelowDeg, maximumView, optimumView } from '../../facts/view.js';
import { planAndRelease } from '../effects.js';
import { inView } from '../in-view.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';
import { seenUnits } from '../seen-units.js';

/**
 * One statement an indicator or annunciator. Where it sits stops a plan or a release, never an instrument that has served for years.
 * Deviation and warnings belong into the cone of eye rotation alone; annunciations of source and approach into the wider one.
 */
export const indicatorInView = defineRule(
  {
    id: 'indicator-in-view',
    topic: 'indication',
    asks: 'Indicators and annunciators sit where their manual approves, or where it is silent within the pilot’s cone of view.',
    binds: 'Indicators joined to a source of guidance, and units that annunciate integrity, approach or source.',
    sources: [lineOfSightBelowDeg.source, optimumView.source, maximumView.source],
    messages: {
      'in-view': '{unit} is in view (judged by its manual, or the {cone} cone).',
      'out-of-view': '{unit} is outside the place, distance or {cone} cone of view that it needs.',
      unclear: 'Whether {unit} is within the {cone} cone of view cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    seenUnits(facts).map(([each, cone]) => ({
      subject: each.id,
      clause: inView(facts, each, cone),
      messages: { met: 'in-view', 'not-met': 'out-of-view', 'cannot-tell': 'unclear', 'not-applicable': 'in-view' },
      data: { unit: each.unit.name, cone },
      effects: planAndRelease,
      remedies: [
        findOut(
          'unit.amend',
          each.id,
          `configuration.units.${each.id}.place`,
          `configuration.units.${each.id}.offsetIn`,
        ),
      ],
    })),
);
