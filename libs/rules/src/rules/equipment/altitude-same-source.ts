import type { SignalCode } from '../../catalogue/type.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, notApplicable } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';

const source = cfr('91.217(b)');

/** One box for both meets it by itself. A separate unit meets it where both altitudes come over recorded joints from one and the same source. */
export const altitudeSameSource = defineRule(
  {
    id: 'altitude-same-source',
    topic: 'equipment',
    asks: 'The pressure altitude that ADS-B Out sends and the one that the transponder reports come from the same source.',
    binds: 'Each ADS-B Out unit in use beside a transponder in use.',
    sources: [source],
    messages: {
      same: '{unit} and the transponder take pressure altitude from one source.',
      different: '{unit} takes pressure altitude from another source than the transponder.',
      unclear: 'From where {unit} or the transponder takes pressure altitude is not recorded.',
      alone: 'There is nothing to compare {unit} with.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('ads-b-out-1090') || each.functions.has('ads-b-out-uat'))
      .map((unit): Draft => {
        const clause = judge(facts, unit);
        return {
          subject: unit.id,
          clause,
          messages: { met: 'same', 'not-met': 'different', 'cannot-tell': 'unclear', 'not-applicable': 'alone' },
          data: { unit: unit.unit.name },
          effects: [{ stops: 'capability', capability: 'ads-b-out', through: unit.id }],
          remedies: [
            { kind: 'do', change: 'link.connect', subject: unit.id, facts: [] },
            ...findOut(clause, 'link.connect', unit.id),
          ],
        };
      }),
);

function judge(facts: Facts, unit: UnitFacts): Clause {
  const transponders = [...facts.units.values()].filter((each) => each.active && each.functions.has('transponder'));
  if (!unit.active || transponders.length === 0) return notApplicable('beside-a-transponder', { source });
  const own = sourceOf(facts, unit, []);
  return allOf(
    'same-altitude-source',
    transponders.map((each) => {
      if (each.id === unit.id) return fact(true, 'one-box', '', { source });
      const other = sourceOf(facts, each, []);
      const same = own === null || other === null ? null : own === other;
      return fact(same, 'same-altitude-source', 'configuration.links', { source });
    }),
    'cannot-tell',
  );
}

const altitude: readonly (SignalCode | null)[] = ['altitude-gray', 'altitude-serial'];

/** The unit at the head of the altitude joints; null where they lead nowhere, or to more than one. */
function sourceOf(facts: Facts, unit: UnitFacts, passed: readonly string[]): string | null {
  const feeds = facts.links.filter((link) => link.toUnit === unit.id && altitude.includes(facts.signalOf(link)));
  if (feeds.length === 0) return unit.functions.has('altitude-reporting') ? unit.id : null;
  const heads = new Set(
    feeds.map((link) => {
      const from = facts.units.get(link.fromUnit);
      return !from || !from.active || passed.includes(from.id) ? null : sourceOf(facts, from, [...passed, unit.id]);
    }),
  );
  return heads.size === 1 ? ([...heads][0] ?? null) : null;
}
