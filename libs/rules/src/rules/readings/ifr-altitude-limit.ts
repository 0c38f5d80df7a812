import type { RecordHead } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, implies, met, notMet, unknown, within } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { underControlledIfr, unitsWith } from '../altitude-chain.js';
import { altitudeEntries } from '../altitude-tests.js';
import { cfr } from '../cite.js';
import { recordIt } from '../remedies.js';
import { entryOutcome } from '../entry-outcome.js';
import { defineRule } from '../rule.js';

const source = cfr('91.411(d)');
type Kind = 'altimeter-test' | 'altitude-reporting-test';

/** The lowest of these altitudes is the aircraft's: it is carried on the verdict and held against the flight's. */
export const ifrAltitudeLimit = defineRule(
  {
    id: 'ifr-altitude-limit',
    topic: 'readings',
    asks: 'No flight under IFR in controlled airspace above the highest altitude to which each altimeter and the altitude reporting system were tested: as the entry says, and where it carries readings of the altimeter no higher than they go.',
    binds: 'Airplanes and helicopters under IFR in controlled airspace; one statement for each altimeter and reporter.',
    sources: [source],
    messages: {
      below: '{item} was tested to {topFt} ft.',
      above: '{item} was tested to {topFt} ft, and the flight goes higher.',
      unrecorded: '{item}: the altitude to which it was tested is not recorded.',
      'not-asked': '{item}: not asked of this aircraft or flight.',
    },
    establishes: [],
  },
  (facts) => unitsWith(facts, 'altimeter', 'altitude-reporting').map((each) => ofUnit(facts, each)),
);

function ofUnit(facts: Facts, unit: UnitFacts): Draft {
  const kinds: readonly Kind[] = [
    ...(unit.functions.has('altimeter') ? (['altimeter-test'] as const) : []),
    ...(unit.functions.has('altitude-reporting') ? (['altitude-reporting-test'] as const) : []),
  ];
  const limits = kinds.map((kind) => testedTo(facts, kind, unit.id));
  const tops = limits.flatMap((each) => each.topFt ?? []);
  const lowest = tops.length > 0 ? Math.min(...tops) : null;
  const inUse = unit.active ? met('in-use', { source }) : notMet('in-use', { source });
  return {
    subject: unit.id,
    clause: implies(
      inUse,
      underControlledIfr(
        facts,
        allOf(
          'at-or-below-tested-altitude',
          limits.map((each) => each.clause),
          'cannot-tell',
        ),
      ),
    ),
    messages: { met: 'below', 'not-met': 'above', 'cannot-tell': 'unrecorded', 'not-applicable': 'not-asked' },
    data: { item: unit.unit.name, topFt: lowest },
    effects: [{ stops: 'capability', capability: 'ifr-aircraft' }],
    remedies: kinds.map((kind) => recordIt(kind, unit.id)),
    ...(tops.length < limits.length ? {} : { topFt: Math.min(...tops) }),
  };
}

/** As high as the entry says, and no higher than its readings go, where it carries them. Null: one of the two is not recorded. */
function topOf({ testedToFt, readings }: RecordHead): number | null {
  const altimeter = readings?.altimeter ?? null;
  if (altimeter === null || testedToFt === null) return testedToFt;
  return altimeter.testedToFt === null ? null : Math.min(testedToFt, altimeter.testedToFt);
}

/**
 * The newest entry that counts says how high. A newer one that may count stands beside it, and the lower of both holds.
 * Equipment that is current by its manufacture date alone has no tested altitude on record.
 */
function testedTo(
  facts: Facts,
  kind: Kind,
  unitId: string,
): { readonly topFt: number | null; readonly clause: Clause } {
  const entries = altitudeEntries(facts, kind, unitId).filter((each) => entryOutcome(each) !== 'not-met');
  const sure = entries.findIndex((each) => entryOutcome(each) === 'met');
  const governing = (sure < 0 ? entries : entries.slice(0, sure + 1)).map((each) => each.record);
  const tops = governing.flatMap((each) => topOf(each) ?? []);
  const evidence = governing.map((each) => each.id);
  if (governing.length === 0 || tops.length < governing.length) {
    const missing = governing.map((each) => `status.records.${each.id}.testedToFt`);
    const extra = { source, ...(evidence.length > 0 ? { evidence } : {}) };
    return {
      topFt: null,
      clause: unknown('tested-altitude-recorded', missing.length > 0 ? missing : ['status.records'], extra),
    };
  }
  const topFt = Math.min(...tops);
  const limit = { source, evidence, limit: { amount: topFt, unit: 'ft' } };
  return {
    topFt,
    clause: within('flight-above-tested-altitude', { when: { topFt: topFt + 1 } }, limit, 'not-met', 'met'),
  };
}
