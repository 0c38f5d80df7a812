import type { Directive } from '../../dossier/status.js';
import type { Facts } from '../../graph/facts.js';
import { lastGoodDay } from '../../time/calendar.js';
import { unknown, within } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { practice } from '../cite.js';
import { complianceEntry, directiveFound, directiveStatus, operateInCompliance } from '../directive-clauses.js';
import { fittedOn } from '../fitted.js';
import { findOut, missingOrReading } from '../gaps.js';
import { dueOn, endOfDay } from '../periodic.js';
import { timelessOutcome } from '../entry-outcome.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

const review = practice('the list of directives is looked through at least with each annual inspection');
const reviewMonths = 12;

/** Stated hours and days may not be overflown: a directive has no allowance unless its own text gives one. */
export const directives = defineRule(
  {
    id: 'directives',
    topic: 'inspections',
    asks: 'Every directive that applies is complied with by an entry that counts and not due again, and a named person stated the list complete within 12 calendar months.',
    binds: 'Every aircraft and what is fitted to it; directives of a unit go with the unit.',
    sources: [operateInCompliance, directiveStatus, tasks.maintenance.source, review],
    messages: {
      done: 'Directive {number} is complied with.',
      'in-time': 'Directive {number} is in time; due: {next}.',
      open: 'Directive {number} is open, before further flight.',
      overdue: 'Directive {number} is not done again by {next}.',
      unproven: 'The entry that complies with directive {number} does not count.',
      unclear: 'Directive {number} cannot be judged; not recorded: {unrecorded}.',
      excepted: 'Directive {number} does not bind: {reason}',
      complete: 'The list of directives was stated complete as of {asOf} by {by}.',
      unreviewed:
        'Nobody stated within 12 calendar months that the list of directives is complete; last stated as of {asOf}.',
      'unit-unsearched': '{unit} was fitted on {fitted}; the list of directives was stated complete as of {asOf}.',
    },
    establishes: [],
  },
  (facts) => [
    ...facts.dossier.status.directives.map((each) => statement(facts, each)),
    list(facts),
    ...unsearched(facts),
  ],
);

function statement(facts: Facts, directive: Directive): Draft {
  const { clause, due, next } = directiveFound(facts, directive);
  const gone = clause.is === 'leaf' && clause.label === 'subject-fitted';
  const unproven = directive.state === 'complied' && timelessOutcome(complianceEntry(facts, directive)) === 'not-met';
  return {
    subject: directive.id,
    clause,
    messages: {
      met: next === null ? 'done' : 'in-time',
      'not-met': unproven ? 'unproven' : next === null ? 'open' : 'overdue',
      'cannot-tell': 'unclear',
      'not-applicable': 'excepted',
    },
    data: {
      number: directive.number,
      next,
      reason: gone ? 'the unit is not fitted.' : directive.reason,
      unrecorded: missingOrReading(clause) ?? 'none',
    },
    effects: [{ stops: 'capability', capability: 'fly' }],
    due,
    remedies: [
      { kind: 'do', change: 'directive.set', subject: directive.id, facts: [] },
      ...findOut(clause, 'directive.set', directive.id),
    ],
  };
}

/** Without the statement an empty list says nothing; an old one says nothing of directives issued since. */
function list(facts: Facts): Draft {
  const stated = facts.complete('directives');
  const missing = ['status.completeness.directives'];
  const last = stated === null ? null : lastGoodDay(stated.asOf, reviewMonths);
  const clause =
    last === null
      ? unknown('list-complete', missing, { source: review })
      : within('list-complete', { before: endOfDay(facts, last) }, { source: review, missing }, 'met', 'cannot-tell');
  return {
    subject: 'directive-list',
    clause,
    messages: { met: 'complete', 'not-met': 'unreviewed', 'cannot-tell': 'unreviewed', 'not-applicable': 'complete' },
    data: { asOf: stated?.asOf ?? 'never', by: stated?.by ?? null },
    effects: [{ stops: 'capability', capability: 'fly' }],
    due: dueOn(facts, 'directive-review', last),
    remedies: findOut(clause, 'completeness.state', 'directives'),
  };
}

/**
 * Directives of avionics are found by the units fitted: a later unit was not looked up. 39.7 binds whoever operates, so until the list
 * is stated again nobody can tell whether the aircraft may fly with it; its job is not closed without that either.
 */
function unsearched(facts: Facts): readonly Draft[] {
  const stated = facts.complete('directives');
  return [...facts.units.values()].flatMap((unit): Draft[] => {
    const fitted = fittedOn(unit);
    if (stated === null || fitted === null || fitted <= stated.asOf) return [];
    const clause = unknown('directives-of-unit-looked-up', ['status.completeness.directives'], { source: review });
    return [
      {
        subject: `unit:${unit.id}`,
        clause,
        messages: {
          met: 'unit-unsearched',
          'not-met': 'unit-unsearched',
          'cannot-tell': 'unit-unsearched',
          'not-applicable': 'unit-unsearched',
        },
        data: { unit: unit.unit.name, fitted, asOf: stated.asOf },
        effects: [{ stops: 'release' }, { stops: 'capability', capability: 'fly' }],
        remedies: findOut(clause, 'completeness.state', 'directives'),
      },
    ];
  });
}
