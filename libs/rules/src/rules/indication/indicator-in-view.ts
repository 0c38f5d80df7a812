import type { FunctionCode } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { lineOfSightBelowDeg, maximumView, optimumView } from '../../facts/view.js';
import { planAndRelease } from '../effects.js';
import type { Cone } from '../in-view.js';
import { inView } from '../in-view.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

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

const annunciations: readonly FunctionCode[] = ['approach-annunciation', 'source-annunciation'];

function seenUnits(facts: Facts): readonly (readonly [UnitFacts, Cone])[] {
  return [...facts.units.values()].flatMap((each): (readonly [UnitFacts, Cone])[] => {
    if (showsDeviation(facts, each)) return [[each, 'optimum']];
    // A source annunciates on its own screen besides: that is asked of the chain, where it counts.
    if (!each.active || facts.chains.some((chain) => chain.source === each)) return [];
    if (each.functions.has('integrity-annunciation')) return [[each, 'optimum']];
    return annunciations.some((code) => each.functions.has(code)) ? [[each, 'maximum']] : [];
  });
}

/** A source's own display counts only while it is joined to no other indicator. */
function showsDeviation(facts: Facts, each: UnitFacts): boolean {
  return facts.chains.some(
    (chain) =>
      chain.indicator === each &&
      (chain.source !== each || facts.chains.every((other) => other.source !== each || other.indicator === each)),
  );
}
