import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, flight, implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft, Due } from '../../verdict/result.js';
import { aim } from '../cite.js';
import type { DataUse } from '../data-verification.js';
import { approachNote, usedFor, verifications, verified } from '../data-verification.js';
import { lostThrough } from '../effects.js';
import { holdsNextCycle, inForce, navigationLoads, regionOf } from '../navigation-data.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

const current = aim('1-1-17 b.2(b)');
const enRouteNote = aim('1-1-17, approval table, note 2');
const supplementGoverns = aim('1-1-17 b.2(a)(4)');

/**
 * Two statements a satellite unit: en route and for approaches. Expired data that the pilot verified may serve where the supplement allows it;
 * a verification is good for the day it names. The next cycle, already loaded, takes over at its effective instant.
 */
export const navigationDataCurrent = defineRule(
  {
    id: 'navigation-data-current',
    topic: 'databases',
    asks: 'Navigation data are in force for the whole flight; expired data serve only verified, and only where the supplement allows it.',
    binds: 'Satellite units under IFR, en route and for approaches; VFR asks nothing of the data.',
    sources: [current, enRouteNote, approachNote, supplementGoverns, verified],
    messages: {
      current: 'Navigation data of {unit} may be used ({use}); they expire {expires}.',
      expired: 'Navigation data of {unit} are not in force ({use}); they expired {expires}.',
      unclear: 'Whether navigation data of {unit} may be used ({use}) cannot be told; expiry {expires}.',
      unrecorded: 'Nobody recorded which navigation data {unit} holds.',
      'vfr-free': 'VFR asks nothing of the navigation data of {unit}.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss'))
      .flatMap((each) => [draft(facts, each, 'en-route'), draft(facts, each, 'approach')]),
);

function draft(facts: Facts, each: UnitFacts, use: DataUse): Draft {
  const loads = navigationLoads(facts, each.id);
  const unrecorded = loads.length === 0 && holdsData(each) !== false;
  const ends = loads.map((load) => regionOf(load).before).filter((end) => end !== null);
  const last = ends.sort().at(-1) ?? null;
  const due: readonly Due[] =
    last === null || use === 'en-route' ? [] : [{ what: 'navigation-data', lapses: last, combine: 'first' }];
  return {
    subject: `${each.id}:${use}`,
    clause: implies(flight('under-ifr', { rules: 'ifr' }, { source: current }), usable(facts, each, use)),
    messages: {
      met: 'current',
      'not-met': 'expired',
      'cannot-tell': unrecorded ? 'unrecorded' : 'unclear',
      'not-applicable': 'vfr-free',
    },
    data: { unit: each.unit.name, use, expires: last },
    effects: lostThrough(each.id, usedFor(use)),
    due,
    remedies: [
      { kind: 'do', change: 'database.load', subject: each.id, facts: [] },
      { kind: 'do', change: 'record.add', subject: `data-verification:${each.id}`, facts: [] },
      ...(unrecorded ? [findOut('database.load', each.id, 'status.loads')] : []),
    ],
  };
}

function usable(facts: Facts, each: UnitFacts, use: DataUse): Clause {
  if (holdsData(each) === false) return notMet('holds-navigation-data', { source: current });
  const loads = navigationLoads(facts, each.id);
  if (loads.length === 0) return unknown('load-recorded', ['status.loads'], { source: current });
  const path = 'configuration.supplements';
  const required = currentRequired(facts, each);
  const noteOfUse = use === 'approach' ? approachNote : enRouteNote;
  const otherwise: readonly Clause[] =
    required === true
      ? [notMet('supplement-allows-expired-data', { source: supplementGoverns })]
      : required === null
        ? [unknown('supplement-allows-expired-data', [`${path}.currentDataRequired`], { source: supplementGoverns })]
        : [
            ...verifications(facts, each, use),
            use === 'en-route'
              ? unknown('verified-by-pilot-for-the-flight', [], { source: noteOfUse })
              : notMet('verification-recorded', { source: noteOfUse }),
          ];
  return anyOf(
    'data-usable',
    [...loads.map((load) => slotClause(each, inForce(load), load.slot)), ...otherwise],
    'cannot-tell',
  );
}

/** Null: not catalogued, so nobody knows whether it holds data at all. */
function holdsData({ type }: UnitFacts): boolean | null {
  return type === null ? null : type.databases.some(({ kind }) => kind === 'navigation');
}

/** A unit that holds one cycle alone cannot take over another by itself. */
function slotClause(each: UnitFacts, clause: Clause, slot: 'this' | 'next'): Clause {
  if (slot === 'this') return clause;
  const holdsNext = holdsNextCycle(each);
  const path = `configuration.units.${each.id}.typeId`;
  const holds =
    holdsNext === null
      ? unknown('unit-holds-next-cycle', [path], { source: current })
      : holdsNext
        ? met('unit-holds-next-cycle', { source: current })
        : notMet('unit-holds-next-cycle', { source: current });
  return allOf('next-cycle-takes-over', [holds, clause], 'cannot-tell');
}

/** The strictest word of its supplements; null: one of them was not read, or none is recorded. */
function currentRequired(facts: Facts, each: UnitFacts): boolean | null {
  const words = facts.dossier.configuration.supplements
    .filter(({ units }) => units.includes(each.id))
    .map((one) => one.currentDataRequired);
  if (words.includes(true)) return true;
  return words.length === 0 || words.includes(null) ? null : false;
}
