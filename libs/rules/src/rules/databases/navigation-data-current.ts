import type { RecordHead } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { startOfDay } from '../../time/zones.js';
import { allOf, anyOf, fact, flight, implies, met, notMet, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft, Due } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { aim } from '../cite.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { inForce, navigationLoads, nextCycleAfter, regionOf } from '../navigation-data.js';
import { endOfDay } from '../periodic.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const current = aim('1-1-17 b.2(b)');
const enRouteNote = aim('1-1-17, approval table, note 2');
const approachNote = aim('1-1-17, approval table, note 3');
const supplementGoverns = aim('1-1-17 b.2(a)(4)');
const verified = aim('1-2-3, note 4');

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

type Use = 'en-route' | 'approach';

function draft(facts: Facts, each: UnitFacts, use: Use): Draft {
  const loads = navigationLoads(facts, each.id);
  const unrecorded = loads.length === 0 && holdsData(each) !== false;
  const expires = loads.map((load) => regionOf(load).before).filter((at) => at !== null);
  const last = expires.reduce<string | null>((late, at) => (late === null || at > late ? at : late), null);
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
    effects: lostThrough(
      each.id,
      gnssCapabilities.filter((capability) => (capability === 'nav-gnss') === (use === 'en-route')),
    ),
    due,
    remedies: [
      { kind: 'do', change: 'database.load', subject: each.id, facts: [] },
      { kind: 'do', change: 'record.add', subject: `data-verification:${each.id}`, facts: [] },
      ...(unrecorded ? [findOut('database.load', each.id, 'status.loads')] : []),
    ],
  };
}

function usable(facts: Facts, each: UnitFacts, use: Use): Clause {
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
  const holdsNext = each.type?.databases.some((one) => one.kind === 'navigation' && one.holdsNext) ?? null;
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

/** Entries of pilots who checked the expired data, each for the days from its own to the one it names. */
function verifications(facts: Facts, each: UnitFacts, use: Use): readonly Clause[] {
  const by = tasks.dataVerification;
  const also = use === 'approach' ? procedureNamed : () => [];
  return accomplished(facts, ['data-verification'], each.id, { by, also }).map(({ record, clause }) =>
    allOf(
      'verified-and-of-the-day',
      [clause, within('day-of-verification', daysOf(facts, record), { source: verified, evidence: [record.id] })],
      'cannot-tell',
    ),
  );
}

/** It is one procedure that was not amended since: the entry names it, or the chart it was compared with. */
function procedureNamed({ id, place, document, note }: RecordHead): readonly Clause[] {
  const named = place !== null || document !== null || note !== null;
  const extra = { source: approachNote, evidence: [id] };
  return [fact(named ? true : null, 'procedure-named', `status.records.${id}.document`, extra)];
}

/** Never beyond the cycle in which it was made: the next one may amend the procedure again. */
function daysOf(facts: Facts, record: RecordHead) {
  const from = startOfDay(record.done.date, facts.zone);
  const named = endOfDay(facts, record.expires ?? record.done.date);
  const change = nextCycleAfter(from);
  return { from, before: change !== null && change < named ? change : named };
}
