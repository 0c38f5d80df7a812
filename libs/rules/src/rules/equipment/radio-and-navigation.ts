import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, anyOf, fact, met, notApplicable } from '../../verdict/build.js';
import type { Clause } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { antennasFor } from '../antennas.js';
import { ac, cfr, practice } from '../cite.js';
import { findOut } from '../gaps.js';
import { defineRule } from '../rule.js';
import { fittedWith, noUnit } from '../unit-state.js';

const source = cfr('91.205(d)(2)');
const portable = practice('a portable device stands in for no required equipment');
const antennas = ac('43.13-2B', 'chapter 3', 'change 1', 'from-memory');

/** The communication half of (d)(2). Navigation suitable for the route is judged as a capability of each receiver. */
export const radioAndNavigation = defineRule(
  {
    id: 'radio-and-navigation',
    topic: 'equipment',
    asks: 'A two-way radio is fitted and in use, and its antenna is an approved one.',
    binds:
      'Each fitted communication unit; a portable one is no means of any capability and stands in for none. Flights under instrument rules and in class B and C airspace need one.',
    sources: [source, antennas, portable],
    messages: {
      ready: '{unit} is in use as a two-way radio.',
      unapproved: 'The antenna of {unit} is not approved.',
      unclear: 'Whether the antenna of {unit} is approved is not recorded.',
      deactivated: '{unit} is deactivated and serves no flight.',
      none: 'No two-way radio is fitted.',
      unrecorded: 'Whether a two-way radio is fitted is not recorded.',
    },
    establishes: ['two-way-radio'],
  },
  (facts) => {
    const units = fittedWith(facts, 'com');
    return units.length === 0
      ? [noUnit(facts, 'two-way-radio-fitted', 'two-way-radio', source)]
      : units.map((each) => statement(facts, each));
  },
);

function statement(facts: Facts, unit: UnitFacts): Draft {
  const clause = unit.active ? inUse(facts, unit) : notApplicable('in-use', { source });
  return {
    subject: unit.id,
    clause,
    messages: { met: 'ready', 'not-met': 'unapproved', 'cannot-tell': 'unclear', 'not-applicable': 'deactivated' },
    data: { unit: unit.unit.name },
    effects: [{ stops: 'capability', capability: 'two-way-radio', through: unit.id }],
    remedies: [
      { kind: 'do', change: 'antenna.fit', subject: unit.id, facts: [] },
      ...findOut(clause, 'antenna.fit', unit.id),
    ],
  };
}

/** Whether an antenna is there at all is judged with the antennas of every unit; here, whether it may serve. */
function inUse(facts: Facts, unit: UnitFacts): Clause {
  const serving = antennasFor(facts, unit, ['com', 'combined']);
  const approvals = serving.map((each) =>
    fact(each.approved, 'antenna-approved', `configuration.antennas.${each.id}.approved`, {
      source: antennas,
      evidence: [each.id],
    }),
  );
  const active = met('in-use', { source });
  return allOf(
    'two-way-radio',
    approvals.length === 0 ? [active] : [active, anyOf('an-approved-antenna', approvals, 'cannot-tell')],
    'cannot-tell',
  );
}
