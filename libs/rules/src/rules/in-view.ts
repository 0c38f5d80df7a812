import { viewAngle } from '../calculations/view.js';
import type { ViewZone } from '../facts/view.js';
import { lineOfSightBelowDeg, maximumView, optimumView } from '../facts/view.js';
import type { SourceRef, Sourced } from '../facts/source.js';
import type { Opening } from '../dossier/installation.js';
import type { Facts } from '../graph/facts.js';
import type { UnitFacts } from '../graph/units.js';
import { allOf, fact, notMet, unknown } from '../verdict/build.js';
import type { Clause, Leaf } from '../verdict/clause.js';
import { roundTo } from '../calculations/rounding.js';
import { maker } from './cite.js';

/** `optimum`: eye rotation only, for primary indication and warnings. `maximum`: least head rotation, for the rest. */
export type Cone = 'optimum' | 'maximum';

const mostIn = 240;
const cones: Readonly<Record<Cone, Sourced<ViewZone>>> = { optimum: optimumView, maximum: maximumView };

/**
 * Whether the pilot sees the unit. What the manual says decides: approved places first (with the distance it allows), or its
 * angle or distance where it names no places. A silent manual leaves the angles of the cone, measured at the opening; a remote
 * unit is in none.
 */
export function inView(facts: Facts, seen: UnitFacts, cone: Cone): Clause {
  const { unit, type } = seen;
  const path = `configuration.units.${seen.id}`;
  const view = type?.view ?? null;
  const opening = facts.dossier.configuration.openings.find((each) => each.id === unit.openingId) ?? null;
  if (view !== null) {
    const source = maker(view.document, 'location and view');
    const parts: Clause[] = [];
    if (view.approvedPlaces.length > 0) {
      const approved = unit.place === null ? null : view.approvedPlaces.includes(unit.place);
      parts.push(fact(approved, 'place-approved-by-manual', `${path}.place`, { source }));
    }
    if (view.maxOffsetIn !== null) {
      const inside = unit.offsetIn === null ? null : unit.offsetIn <= view.maxOffsetIn;
      parts.push(
        fact(inside, 'within-distance-of-manual', `${path}.offsetIn`, {
          source,
          ...quantities(unit.offsetIn, view.maxOffsetIn, 'in'),
        }),
      );
    }
    if (view.approvedPlaces.length === 0 && view.maxHorizontalDeg !== null)
      parts.push(horizontal(seen, opening, view.maxHorizontalDeg, source, 'within-angle-of-manual'));
    if (parts.length > 0) return allOf('seen-as-manual-asks', parts, 'cannot-tell');
  }
  const { value: zone, source } = cones[cone];
  // Behind the panel or in the tail: no angle to measure.
  if (unit.place === 'remote') return notMet('before-the-pilot', { source });
  return allOf(
    `within-${cone}-view`,
    [horizontal(seen, opening, zone.horizontalDeg, source, 'horizontal-angle'), vertical(seen, opening, zone, source)],
    'cannot-tell',
  );
}

function horizontal(seen: UnitFacts, opening: Opening | null, mostDeg: number, source: SourceRef, label: string): Leaf {
  const deg = angle(opening?.rightOfEyeIn ?? null, opening);
  if (deg === null) return unknown(label, missingOf(seen, opening, 'rightOfEyeIn'), { source });
  return fact(Math.abs(deg) <= mostDeg, label, '', { source, ...quantities(Math.abs(deg), mostDeg, 'degrees') });
}

/** From the normal line of sight, which itself dips below the horizontal; up is positive. */
function vertical(seen: UnitFacts, opening: Opening | null, zone: ViewZone, source: SourceRef): Leaf {
  const below = angle(opening?.belowEyeIn ?? null, opening);
  if (below === null) return unknown('vertical-angle', missingOf(seen, opening, 'belowEyeIn'), { source });
  const up = roundTo(lineOfSightBelowDeg.value - below, 2);
  return fact(up <= zone.upDeg && -up <= zone.downDeg, 'vertical-angle', '', {
    source,
    ...quantities(up, up >= 0 ? zone.upDeg : -zone.downDeg, 'degrees'),
  });
}

/** Null: not measured, or a number that no cabin has. */
function angle(offsetIn: number | null, opening: Opening | null): number | null {
  const distanceIn = opening?.eyeDistanceIn ?? null;
  if (offsetIn === null || distanceIn === null || Math.abs(offsetIn) > mostIn || distanceIn > mostIn) return null;
  return viewAngle({ offsetIn, distanceIn });
}

function missingOf(seen: UnitFacts, opening: Opening | null, side: 'rightOfEyeIn' | 'belowEyeIn'): readonly string[] {
  if (opening === null) return [`configuration.units.${seen.id}.openingId`];
  const path = `configuration.openings.${opening.id}`;
  return [
    ...(opening.eyeDistanceIn === null ? [`${path}.eyeDistanceIn`] : []),
    ...(opening[side] === null || opening.eyeDistanceIn !== null ? [`${path}.${side}`] : []),
  ];
}

function quantities(value: number | null, limit: number, unit: string): Partial<Pick<Leaf, 'value' | 'limit'>> {
  return value === null ? {} : { value: { amount: value, unit }, limit: { amount: limit, unit } };
}
