import type { Loading } from '../../calculations/loading.js';
import { adverseLoadings, percentOfChord } from '../../calculations/loading.js';
import { emptyWeightAfter } from '../../calculations/mass.js';
import { adverseLoading } from '../../facts/mass.js';
import type { Envelope, Mass, MassChange } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, anyOf, fact, notMet, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import type { Remedy } from '../../verdict/result.js';
import { ac } from '../cite.js';
import { advice, planAndRelease } from '../effects.js';
import { countRemedies, uncounted } from '../mass-notes.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const placards = ac('43.13-1B', 'chapter 10, loading conditions and placards (from memory)', 'change 1', 'from-memory');
const weigh: Remedy = { kind: 'do', change: 'mass.revise', subject: 'aircraft', facts: [] };
const mostLb = 1_000_000;
const mostIn = 10_000;

/** One statement. The empty weight with what was changed since; then as far forward and as far aft as the stations allow. */
export const loadedExtremes = defineRule(
  {
    id: 'loaded-extremes',
    topic: 'mass',
    asks: 'Loaded as far forward and as far aft as its stations allow, the aircraft stays within its limits, or a placard in view says how to load it.',
    binds: 'Aircraft with an empty-weight record; advice until somebody has recorded limits and stations.',
    sources: [adverseLoading.forward, adverseLoading.aft, placards],
    messages: {
      within: 'Adverse loadings lie at {forwardIn} and {aftIn} in, within the limits.',
      'within-chord':
        'Adverse loadings lie at {forwardIn} and {aftIn} in ({forwardPercent} and {aftPercent} % of the chord), within the limits.',
      beyond: 'An adverse loading lies beyond the limits: {forwardIn} in forward, {aftIn} in aft.',
      unclear: 'Whether adverse loadings stay within the limits cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const { mass } = facts.dossier.configuration;
    if (mass === null) return [];
    const extremes = extremesOf(mass);
    const forwardPercent = percent(mass, extremes?.forward ?? null);
    const met = forwardPercent === null ? 'within' : 'within-chord';
    return [
      {
        subject: 'aircraft',
        clause: clauseOf(facts, mass),
        messages: { met, 'not-met': 'beyond', 'cannot-tell': 'unclear', 'not-applicable': met },
        data: {
          forwardIn: extremes?.forward.armIn ?? null,
          aftIn: extremes?.aft.armIn ?? null,
          forwardPercent,
          aftPercent: percent(mass, extremes?.aft ?? null),
        },
        effects: mass.envelope === null ? advice : planAndRelease,
        remedies: [
          findOut('mass.revise', 'aircraft', ...missing(mass)),
          ...(uncounted(facts, mass).length === 0 ? [] : [weigh]),
          ...countRemedies(uncounted(facts, mass)),
          { kind: 'do', change: 'placard.fit', subject: 'aircraft', facts: [] },
        ],
      },
    ];
  },
);

function clauseOf(facts: Facts, mass: Mass): Clause {
  const extremes = extremesOf(mass);
  if (extremes === null) return unknown('extremes-within-limits', missing(mass), { source: adverseLoading.forward });
  const { forward, aft } = extremes;
  const { placards: fitted } = facts.dossier.configuration;
  const told = fitted.filter(({ kind }) => kind === 'loading');
  const safe = anyOf(
    'loading-safe',
    [
      allOf('extremes-within-limits', [within('forward', forward), within('aft', aft)], 'cannot-tell'),
      ...told.map(({ id, inView }) =>
        fact(inView, 'loading-placard-in-view', `configuration.placards.${id}.inView`, {
          source: placards,
          evidence: [id],
        }),
      ),
    ],
    'cannot-tell',
  );
  // What was never counted makes the figures doubtful, and those of a placard with them.
  const counted = uncounted(facts, mass).map((path) =>
    unknown('weight-counted', [path], { source: adverseLoading.aft }),
  );
  return counted.length === 0 ? safe : allOf('loading-known', [safe, ...counted], 'cannot-tell');
}

function within(side: 'forward' | 'aft', { armIn, limits }: Loading): Leaf {
  const source = adverseLoading[side];
  if (limits === null) return notMet(`${side}-within-greatest-weight`, { source });
  const limit = side === 'forward' ? limits.forwardIn : limits.aftIn;
  return fact(side === 'forward' ? armIn >= limit : armIn <= limit, `${side}-extreme`, '', {
    source,
    value: { amount: armIn, unit: 'in' },
    limit: { amount: limit, unit: 'in' },
  });
}

/** Null: something is not recorded, or a number that no aircraft has. */
function extremesOf(mass: Mass): ReturnType<typeof adverseLoadings> | null {
  const { envelope } = mass;
  const changes = mass.changesSince.flatMap(known);
  if (envelope === null || envelope.stations.length === 0 || changes.length < mass.changesSince.length) return null;
  if (!plausible(mass, envelope) || !changes.every(inBounds)) return null;
  const sum = changes.reduce((total, each) => total + each.weightLb, mass.emptyWeightLb);
  if (sum < 1) return null;
  const empty = emptyWeightAfter({ weightLb: mass.emptyWeightLb, armIn: mass.emptyArmIn }, changes);
  return adverseLoadings(empty, envelope.stations, envelope.points);
}

function known({ weightLb, armIn }: MassChange): { weightLb: number; armIn: number }[] {
  return armIn === null ? [] : [{ weightLb, armIn }];
}

function inBounds({ weightLb, armIn }: { readonly weightLb: number; readonly armIn: number }): boolean {
  return Math.abs(weightLb) <= mostLb && Math.abs(armIn) <= mostIn;
}

function plausible({ emptyWeightLb, emptyArmIn }: Mass, { points, stations }: Envelope): boolean {
  return (
    inBounds({ weightLb: emptyWeightLb, armIn: emptyArmIn }) &&
    points.every(({ weightLb, forwardIn, aftIn }) => weightLb <= mostLb && forwardIn <= aftIn) &&
    stations.every(({ armIn, leastLb, mostLb: full }) => leastLb <= full && inBounds({ weightLb: full, armIn }))
  );
}

function percent({ macIn, envelope }: Mass, loading: Loading | null): number | null {
  const leadingEdgeIn = envelope?.leadingEdgeIn ?? null;
  if (loading === null || macIn === null || leadingEdgeIn === null) return null;
  if (macIn > mostIn || Math.abs(leadingEdgeIn) > mostIn) return null;
  return percentOfChord({ armIn: loading.armIn, leadingEdgeIn, chordIn: macIn });
}

function missing(mass: Mass): readonly string[] {
  const path = 'configuration.mass';
  return [
    ...(mass.envelope === null ? [`${path}.envelope`] : []),
    ...(mass.envelope?.stations.length === 0 ? [`${path}.envelope.stations`] : []),
    ...mass.changesSince.flatMap((each, index) => (each.armIn === null ? [`${path}.changesSince.${index}.armIn`] : [])),
  ];
}
