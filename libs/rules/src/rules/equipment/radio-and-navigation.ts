import type { SourceRef } from '../../facts/source.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, notApplicable, notMet, unknown } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { ac, cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';
import { noneFitted } from '../unit-state.js';

const source = cfr('91.205(d)(2)');
const antennas = ac('43.13-2B', 'chapter 3', 'change 1', 'from-memory');

/** The communication half of (d)(2). Navigation suitable for the route is judged as a capability of each receiver. */
export const radioAndNavigation = defineRule(
  {
    id: 'radio-and-navigation',
    topic: 'equipment',
    asks: 'A two-way radio is fitted, in use, and served by an approved communication antenna.',
    binds: 'Each communication unit; flights under instrument rules and in class B and C airspace need one.',
    sources: [source, antennas],
    messages: {
      ready: '{unit} is served by a communication antenna.',
      unserved: '{unit} has no approved communication antenna.',
      unclear: 'Which antenna serves {unit} is not recorded.',
      deactivated: '{unit} is deactivated and serves no flight.',
      none: 'No two-way radio is fitted.',
      unrecorded: 'Whether a two-way radio is fitted is not recorded.',
    },
    establishes: ['two-way-radio'],
  },
  (facts) => {
    const units = [...facts.units.values()].filter((each) => each.functions.has('com'));
    return units.length === 0 ? [none(facts)] : units.map((each) => statement(facts, each));
  },
);

function statement(facts: Facts, unit: UnitFacts): Draft {
  const clause = unit.active ? served(facts, unit, source) : notApplicable('in-use', { source });
  return {
    subject: unit.id,
    clause,
    messages: { met: 'ready', 'not-met': 'unserved', 'cannot-tell': 'unclear', 'not-applicable': 'deactivated' },
    data: { unit: unit.unit.name },
    effects: [{ stops: 'capability', capability: 'two-way-radio', through: unit.id }],
    remedies: [
      { kind: 'do', change: 'antenna.fit', subject: unit.id, facts: [] },
      ...findOut(clause, 'antenna.fit', unit.id),
    ],
  };
}

function served(facts: Facts, unit: UnitFacts, asks: SourceRef): Clause {
  const serving = facts.antennasOf(unit.id).filter((each) => each.kind === 'com' || each.kind === 'combined');
  const of = serving.map((each) =>
    fact(each.approved, 'antenna-approved', `configuration.antennas.${each.id}.approved`, {
      source: antennas,
      evidence: [each.id],
    }),
  );
  const unrecorded =
    facts.complete('equipment') === null
      ? unknown('antenna-recorded', ['configuration.antennas'], { source: asks })
      : notMet('antenna-fitted', { source: asks });
  return allOf('two-way-radio', [anyOf('served-by', of.length > 0 ? of : [unrecorded], 'cannot-tell')], 'cannot-tell');
}

function none(facts: Facts): Draft {
  const clause = noneFitted(facts, 'two-way-radio-fitted', source);
  return {
    subject: 'aircraft',
    clause,
    messages: { met: 'none', 'not-met': 'none', 'cannot-tell': 'unrecorded', 'not-applicable': 'none' },
    data: { unit: null },
    effects: [{ stops: 'capability', capability: 'two-way-radio' }],
    remedies: [
      { kind: 'do', change: 'unit.install', subject: 'aircraft', facts: [] },
      ...findOut(clause, 'completeness.state', 'aircraft'),
    ],
  };
}
