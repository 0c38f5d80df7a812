import { emptyWeightAfter, negligibleWeightLb } from '../../calculations/mass.js';
import { roundTo } from '../../calculations/rounding.js';
import { negligibleShiftOfChord, negligibleShiftOfRange, negligibleWeight } from '../../facts/mass.js';
import type { Mass } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, fact, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import { reading } from '../cite.js';
import { countRemedies, uncounted } from '../mass-notes.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const whyRelease = reading(
  '14 CFR 91.9',
  'limits of weight and balance bind each flight by its loading; the record of the empty weight belongs to the release of the work that changed it',
);
const mostLb = 1_000_000;
const mostIn = 10_000;

/**
 * Small changes may go without a revision one by one, but not all together. It stops a release and no flight: no text that was read makes
 * the missing record by itself a bar to flight, and an old record would otherwise ground every aircraft just taken in.
 */
export const emptyWeightRecord = defineRule(
  {
    id: 'empty-weight-record',
    topic: 'mass',
    asks: 'All changes since the empty-weight record was last revised are together small enough to go without a revision.',
    binds: 'Every aircraft.',
    sources: [negligibleWeight.source, whyRelease],
    messages: {
      negligible: 'Changes since {revisedOn} add up to {weightLb} lb and {shiftIn} in: negligible.',
      revise: 'Changes since {revisedOn} add up to {weightLb} lb and {shiftIn} in: the record must be revised.',
      unclear: 'Whether the changes since {revisedOn} are negligible cannot be told.',
      unrecorded: 'No empty-weight record is known.',
    },
    establishes: [],
  },
  (facts) => {
    const { mass } = facts.dossier.configuration;
    const path = 'configuration.mass';
    return [
      {
        subject: 'aircraft',
        clause: mass === null ? unknown('record-known', [path], { source: whyRelease }) : judge(facts, mass),
        messages: {
          met: 'negligible',
          'not-met': 'revise',
          'cannot-tell': mass === null ? 'unrecorded' : 'unclear',
          'not-applicable': 'negligible',
        },
        data: {
          revisedOn: mass?.revisedOn ?? null,
          weightLb: mass && netWeight(mass),
          shiftIn: mass && shift(mass),
        },
        effects: [{ stops: 'release' }],
        remedies: [
          { kind: 'do', change: 'mass.revise', subject: 'aircraft', facts: [] },
          findOut('mass.revise', 'aircraft', ...(mass === null ? [path] : missing(mass))),
          ...countRemedies(mass === null ? [] : uncounted(facts, mass)),
        ],
      },
    ];
  },
);

function judge(facts: Facts, mass: Mass): Clause {
  const most = mass.emptyWeightLb <= mostLb && mass.emptyWeightLb >= 1 ? negligibleWeightLb(mass.emptyWeightLb) : null;
  const net = Math.abs(netWeight(mass));
  const sum =
    most === null
      ? unknown('sum-of-weights', ['configuration.mass.emptyWeightLb'], { source: negligibleWeight.source })
      : fact(net <= most, 'sum-of-weights', '', {
          source: negligibleWeight.source,
          value: { amount: net, unit: 'lb' },
          limit: { amount: most, unit: 'lb' },
        });
  return allOf(
    'negligible-together',
    [sum, ...(mass.changesSince.length > 0 ? [shiftClause(facts, mass)] : []), ...allCounted(facts, mass)],
    'cannot-tell',
  );
}

function shiftClause(facts: Facts, mass: Mass): Clause {
  const { kind } = facts.dossier.configuration.aircraft;
  const rotorcraft = kind === 'helicopter';
  const fixedWing = kind === 'airplane' || kind === 'glider';
  // A rotorcraft is judged by the range of its centre of gravity; for what is neither the circular has no figure.
  const { source } = fixedWing ? negligibleShiftOfChord : negligibleShiftOfRange;
  const moved = shift(mass);
  const limit = fixedWing
    ? share(mass.macIn, negligibleShiftOfChord.value)
    : share(rotorcraft ? rangeOf(mass) : null, negligibleShiftOfRange.value);
  if (moved === null || limit === null)
    return unknown(
      'shift-of-centre',
      [...missing(mass), ...(fixedWing || mass.envelope !== null ? [] : ['configuration.mass.envelope'])],
      { source },
    );
  return fact(Math.abs(moved) < limit, 'shift-of-centre', '', {
    source,
    value: { amount: Math.abs(moved), unit: 'in' },
    limit: { amount: limit, unit: 'in' },
  });
}

function share(ofIn: number | null, part: number): number | null {
  return ofIn === null ? null : roundTo(ofIn * part, 4);
}

/** The greatest range that the limits leave at any weight. */
function rangeOf({ envelope }: Mass): number | null {
  return envelope === null ? null : Math.max(...envelope.points.map(({ forwardIn, aftIn }) => aftIn - forwardIn));
}

/** What went in or came out after the revision must have its own weight among the changes. */
function allCounted(facts: Facts, mass: Mass): readonly Clause[] {
  return uncounted(facts, mass).map((path) => unknown('weight-counted', [path], { source: negligibleWeight.source }));
}

function netWeight(mass: Mass): number {
  return roundTo(
    mass.changesSince.reduce((sum, each) => sum + each.weightLb, 0),
    2,
  );
}

/** Inches, aft positive; null: an arm is not recorded, or a number that no aircraft has. */
function shift({ emptyWeightLb, emptyArmIn, changesSince }: Mass): number | null {
  const items = [{ weightLb: emptyWeightLb, armIn: emptyArmIn }, ...changesSince].flatMap(({ weightLb, armIn }) =>
    armIn !== null && Math.abs(armIn) <= mostIn && Math.abs(weightLb) <= mostLb ? [{ weightLb, armIn }] : [],
  );
  const [before, ...changes] = items;
  const total = items.reduce((sum, each) => sum + each.weightLb, 0);
  if (!before || items.length !== changesSince.length + 1 || total < 1) return null;
  return emptyWeightAfter(before, changes).shiftIn;
}

function missing(mass: Mass): readonly string[] {
  return [
    ...(mass.macIn === null ? ['configuration.mass.macIn'] : []),
    ...mass.changesSince.flatMap((each, index) =>
      each.armIn === null ? [`configuration.mass.changesSince.${index}.armIn`] : [],
    ),
  ];
}
