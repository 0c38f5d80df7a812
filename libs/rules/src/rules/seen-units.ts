import type { FunctionCode } from '../catalogue/type.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { mayServe } from '../graph/units.js';
import type { Cone } from './in-view.js';

const annunciations: readonly FunctionCode[] = ['approach-annunciation', 'source-annunciation'];

/** Indicators and annunciators with the cone of view they belong into: deviation and warnings the narrow one, the rest the wider. */
export function seenUnits(facts: Facts): readonly (readonly [UnitFacts, Cone])[] {
  return [...facts.units.values()].flatMap((each): (readonly [UnitFacts, Cone])[] => {
    if (showsDeviation(facts, each)) return [[each, 'optimum']];
    // A source annunciates on its own screen besides: that is asked of the chain, where it counts.
    if (!mayServe(each) || facts.chains.some((chain) => chain.source === each)) return [];
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
