import { roundTo } from '../../calculations/rounding.js';
import type { Opening } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { unitAcceptedAsFound } from '../as-found.js';
import { practice } from '../cite.js';
import { planAndRelease } from '../effects.js';
import { defineRule } from '../rule.js';

const source = practice('a unit passes its opening, units of one opening stand above each other');

/** One statement an opening that holds a unit. It stops a plan or a release; a unit that has sat there for years loses nothing in flight. */
export const fitsTheOpening = defineRule(
  {
    id: 'fits-the-opening',
    topic: 'installation',
    asks: 'Units fit the opening of the panel that holds them: none is wider, and together they are not higher.',
    binds: 'Each opening with a unit in it; units that somebody accepted as found fit as they sit.',
    sources: [source],
    messages: {
      fits: 'Everything in {opening} fits: {heightIn} of {openIn} in.',
      'too-large': 'What is to go into {opening} does not fit: {heightIn} of {openIn} in.',
      unclear: 'Whether everything in {opening} fits cannot be told.',
    },
    establishes: [],
  },
  (facts) =>
    facts.dossier.configuration.openings.flatMap((opening) => {
      const inside = [...facts.units.values()].filter((each) => each.unit.openingId === opening.id);
      if (inside.length === 0) return [];
      return [
        {
          subject: opening.id,
          clause: allOf(
            'fits',
            [
              everyUnitPlaced(facts, opening),
              anyOf('as-found-or-measured', [allFound(inside), measured(opening, inside)], 'cannot-tell'),
            ],
            'cannot-tell',
          ),
          messages: {
            met: 'fits',
            'not-met': 'too-large',
            'cannot-tell': 'unclear',
            'not-applicable': 'fits',
          },
          data: { opening: opening.id, heightIn: heightOf(inside), openIn: opening.heightIn },
          effects: planAndRelease,
          remedies: [
            { kind: 'find-out' as const, change: 'opening.set', subject: opening.id, facts: missingSizes(opening) },
          ],
        },
      ];
    }),
);

/** A panel unit whose opening nobody recorded may be in this one. */
function everyUnitPlaced(facts: Facts, opening: Opening): Clause {
  const adrift = [...facts.units.values()].filter(
    ({ unit, type }) =>
      unit.openingId === null &&
      (unit.place === null || unit.place === opening.place) &&
      (type === null || type.bezel !== null),
  );
  return adrift.length === 0
    ? met('units-of-opening-known', { source })
    : unknown(
        'units-of-opening-known',
        adrift.map((each) => `configuration.units.${each.id}.openingId`),
        { source },
      );
}

function allFound(inside: readonly UnitFacts[]): Clause {
  return allOf('all-accepted-as-found', inside.map(unitAcceptedAsFound), 'cannot-tell');
}

function measured(opening: Opening, inside: readonly UnitFacts[]): Clause {
  const unmeasured = inside.filter((each) => !each.type?.bezel).map((each) => `catalogue.${each.id}.bezel`);
  const widest = Math.max(0, ...inside.map((each) => each.type?.bezel?.widthIn ?? 0));
  return allOf(
    'measured',
    [
      within('width', widest, opening.widthIn, `configuration.openings.${opening.id}.widthIn`, unmeasured),
      within('height', heightOf(inside), opening.heightIn, `configuration.openings.${opening.id}.heightIn`, unmeasured),
    ],
    'cannot-tell',
  );
}

/** Known parts that are too large already decide, whatever the others measure. */
function within(
  label: string,
  value: number,
  limit: number | null,
  path: string,
  unmeasured: readonly string[],
): Clause {
  const missing = [...(limit === null ? [path] : []), ...unmeasured];
  const extra =
    limit === null
      ? { source }
      : { source, value: { amount: value, unit: 'in' }, limit: { amount: limit, unit: 'in' } };
  if (limit !== null && value > limit) return notMet(label, extra);
  return missing.length > 0 ? unknown(label, missing, extra) : met(label, extra);
}

function heightOf(inside: readonly UnitFacts[]): number {
  return roundTo(
    inside.reduce((sum, each) => sum + (each.type?.bezel?.heightIn ?? 0), 0),
    3,
  );
}

function missingSizes(opening: Opening): readonly string[] {
  return (['widthIn', 'heightIn'] as const)
    .filter((each) => opening[each] === null)
    .map((each) => `configuration.openings.${opening.id}.${each}`);
}
