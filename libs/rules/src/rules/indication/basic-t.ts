import { basicT as arrangement, partItself } from '../../facts/old-part-23.js';
import type { Opening } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import type { Demand } from '../certification-basis.js';
import { bindingOf } from '../certification-basis.js';
import { advice } from '../effects.js';
import { findOut, listed } from '../gaps.js';
import { defineRule } from '../rule.js';

const { value: places, source } = arrangement;
const demand: Demand = { part23: partItself, part27: null, car3: 'does-not' };
type Shown = keyof typeof places;
const shownBesides: readonly Shown[] = ['airspeed', 'altitude', 'direction'];
const wordOf = { left: 'to the left', right: 'to the right', below: 'below' } as const;

/** One statement an attitude instrument, by the middles of the openings. A display that shows the others too arranges them itself. */
export const basicT = defineRule(
  {
    id: 'basic-t',
    topic: 'indication',
    asks: `About the instrument of attitude airspeed stands ${wordOf[places.airspeed]}, altitude ${wordOf[places.altitude]} and direction ${wordOf[places.direction]}.`,
    binds:
      'Attitude instruments of airplanes under part 23 before amendment 23-64, as advice: since which amendment it is asked, and whether the approval of the panel took it up, is not recorded. Not displays that show altitude or direction on the same screen.',
    sources: [source],
    messages: {
      stands: 'About {unit} the instruments stand as the basic T has them.',
      apart: '{unit}: {apart} is not where the basic T has it.',
      unclear: '{unit}: whether the instruments about it stand as the basic T has them cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    bindingOf(facts, demand) === 'does-not'
      ? []
      : [...facts.units.values()].filter(isByItself).map((each) => statement(facts, each)),
);

function isByItself({ active, functions }: UnitFacts): boolean {
  return active && functions.has('attitude') && !functions.has('altimeter') && !functions.has('direction');
}

function statement(facts: Facts, attitude: UnitFacts): Draft {
  const about = shownBesides.map((shown) => ({ shown, leaves: candidates(facts, attitude, shown) }));
  const clause = allOf(
    'basic-t',
    about.map(({ shown, leaves }): Clause => anyOf(`${shown}-in-its-place`, leaves, 'cannot-tell')),
    'cannot-tell',
  );
  const apart = about.filter(({ leaves }) => leaves.every(({ inside }) => inside === 'not-met'));
  return {
    subject: attitude.id,
    clause,
    messages: { met: 'stands', 'not-met': 'apart', 'cannot-tell': 'unclear', 'not-applicable': 'stands' },
    data: { unit: attitude.unit.name, apart: listed(apart.map(({ shown }) => shown)) },
    effects: advice,
    remedies: findOut(clause, 'opening.set', attitude.unit.openingId ?? attitude.id),
  };
}

/** A leaf for each unit that shows it; without any it may be one that nobody recorded. */
function candidates(facts: Facts, attitude: UnitFacts, shown: Shown): readonly Leaf[] {
  const label = `${shown}-${places[shown]}-of-attitude`;
  const units = showing(facts, shown);
  if (units.length === 0) {
    const path = shown === 'airspeed' ? 'configuration.equipment.airspeed-indicator' : 'configuration.units';
    return [unknown(label, [path], { source })];
  }
  return units.map((each) => {
    const [from, to] = [openingOf(facts, attitude), openingOf(facts, each)];
    const missing = [
      ...(from === null ? [`configuration.units.${attitude.id}.openingId`] : []),
      ...(to === null ? [`configuration.units.${each.id}.openingId`] : []),
    ];
    if (from === null || to === null) return unknown(label, missing, { source });
    return fact(stands(from, to, places[shown]), label, `configuration.openings`, { source });
  });
}

function showing(facts: Facts, shown: Shown): readonly UnitFacts[] {
  const units = [...facts.units.values()];
  const item = facts.dossier.configuration.equipment.find((each) => each.item === 'airspeed-indicator');
  if (shown === 'airspeed') return units.filter(({ id }) => item?.unitId === id);
  return units.filter(({ functions }) => functions.has(shown === 'altitude' ? 'altimeter' : 'direction'));
}

function openingOf(facts: Facts, { unit }: UnitFacts): Opening | null {
  return facts.dossier.configuration.openings.find(({ id }) => id === unit.openingId) ?? null;
}

/** Further to that side than it is off it. Null: not measured. */
function stands(from: Opening, to: Opening, place: 'left' | 'right' | 'below'): boolean | null {
  if (from.rightOfEyeIn === null || from.belowEyeIn === null || to.rightOfEyeIn === null || to.belowEyeIn === null)
    return null;
  const right = to.rightOfEyeIn - from.rightOfEyeIn;
  const below = to.belowEyeIn - from.belowEyeIn;
  if (place === 'below') return below > Math.abs(right);
  return (place === 'right' ? right : -right) > Math.abs(below);
}
