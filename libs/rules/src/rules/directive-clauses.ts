import type { Recurrence } from '../calculations/recurrence.js';
import type { Directive } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, met, notApplicable, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';
import type { Counted } from './accomplished.js';
import { accomplished } from './accomplished.js';
import { cfr, maker } from './cite.js';
import { dueAt, dueWords, untilDue } from './due-point.js';
import { intervalParts, partWords } from './in-interval.js';
import type { Recurring } from './recurring.js';
import { recurring } from './recurring.js';
import { isRecorded, wasUnit } from './subjects.js';
import { tasks } from './who-may.js';

export const operateInCompliance = cfr('39.7, 91.403(a)');
export const directiveStatus = cfr('91.417(a)(2)(v)');

/** What was found about one directive. `next` in words, null where nothing is due again. */
export interface DirectiveFound {
  readonly clause: Clause;
  readonly due: readonly Due[];
  readonly next: string | null;
}

/** Does it bind, was it done by an entry that counts, and is it in time? */
export function directiveFound(facts: Facts, directive: Directive): DirectiveFound {
  const settled = subjectGone(facts, directive) ?? ofAnotherPart(facts, directive) ?? notApplying(directive);
  if (settled !== null) return { clause: settled, due: [], next: null };
  const stated = statedPoint(facts, directive);
  if (directive.state === 'open') {
    const beforeFlight = notMet('complied-with-before-further-flight', { source: operateInCompliance });
    return stated ?? { clause: beforeFlight, due: [], next: null };
  }
  const again = directive.interval === null ? null : byInterval(facts, directive, directive.interval);
  const method =
    directive.method === null
      ? unknown('method-recorded', [`status.directives.${directive.id}.method`], { source: directiveStatus })
      : met('method-recorded', { source: directiveStatus });
  const holds = statedStillHolds(facts, directive, again) ? stated : null;
  const parts = [
    again?.clause ?? complianceEntry(facts, directive),
    method,
    ...(holds === null ? [] : [holds.clause]),
    ...(again === null && holds === null ? doneForGood(directive) : []),
  ];
  return {
    clause: allOf('complied-with', parts, 'cannot-tell'),
    due: [...(again?.due ?? []), ...(holds?.due ?? [])],
    next: nextWords(again, holds),
  };
}

/** The entry that the directive names: of this directive, though it may cover others, and no newer one failed. */
export function complianceEntry(facts: Facts, directive: Directive): Clause {
  const named = facts.dossier.status.records.find((each) => each.id === directive.recordId);
  if (!named)
    return unknown('entry-recorded', [`status.directives.${directive.id}.recordId`], { source: directiveStatus });
  return (
    entriesOf(facts, directive).find((each) => each.record === named)?.clause ??
    notMet('entry-of-this-directive', { source: directiveStatus, evidence: [named.id] })
  );
}

function entriesOf(facts: Facts, directive: Directive): readonly Counted[] {
  return accomplished(facts, ['directive-compliance'], directive.id, { by: tasks.maintenance });
}

/** What it is on was taken out, or is on no record. */
function subjectGone(facts: Facts, directive: Directive): Clause | null {
  if (isRecorded(facts, directive.subject)) return null;
  const source = operateInCompliance;
  return wasUnit(facts, directive.subject)
    ? notApplicable('subject-fitted', { source })
    : unknown('subject-fitted', [`status.directives.${directive.id}.subject`], { source });
}

function notApplying({ id, state, reason }: Directive): Clause | null {
  if (state !== 'not-applicable') return null;
  const source = operateInCompliance;
  return reason === null
    ? unknown('reason-why-not-applicable', [`status.directives.${id}.reason`], { source })
    : notApplicable('does-not-apply', { source });
}

/** Looked up for, or done on, another part or serial number than the one fitted: nobody knows of this one. */
function ofAnotherPart(facts: Facts, directive: Directive): Clause | null {
  const unit = facts.units.get(directive.subject);
  if (!unit) return null;
  const differs = (said: string | null, fitted: string | null) => said !== null && said !== fitted;
  const path = `status.directives.${directive.id}`;
  const missing = [
    ...(differs(directive.partNumber, unit.type?.partNumber ?? null) ? [`${path}.partNumber`] : []),
    ...(differs(directive.serial, unit.unit.serial) ? [`${path}.serial`] : []),
  ];
  return missing.length === 0 ? null : unknown('of-the-part-fitted', missing, { source: operateInCompliance });
}

function byInterval(facts: Facts, directive: Directive, interval: NonNullable<Directive['interval']>): Recurring {
  const parts = intervalParts(interval.parts);
  if (parts === null) {
    const missing = [`status.directives.${directive.id}.interval.parts`];
    const clause = unknown('meter-of-interval-recorded', missing, { source: compliance(directive) });
    return { clause, governing: null, lastGood: null, at: null, next: [], due: [] };
  }
  const recurrence: Recurrence = { ...interval, parts };
  return recurring(facts, entriesOf(facts, directive), recurrence, {
    what: directive.number,
    label: 'within-interval',
    source: compliance(directive),
    none: complianceEntry(facts, directive),
  });
}

/** The point that its entry or the directive itself names. */
function statedPoint(facts: Facts, directive: Directive): DirectiveFound | null {
  const { id, number, nextDue } = directive;
  if (nextDue === null) return null;
  return {
    clause: untilDue(facts, nextDue, `status.directives.${id}.nextDue`, compliance(directive)),
    due: [dueAt(facts, number, nextDue)],
    next: dueWords(nextDue),
  };
}

/** A point is stated with an entry. An interval counts on from a newer entry; without one nothing is known beyond the point. */
function statedStillHolds(facts: Facts, directive: Directive, again: Recurring | null): boolean {
  const named = facts.dossier.status.records.find((each) => each.id === directive.recordId);
  const governing = again?.governing ?? null;
  return !named || governing === null || governing.done.date <= named.done.date;
}

/** Nothing says when it is due again: done once, as somebody read up, or not known. */
function doneForGood(directive: Directive): readonly Clause[] {
  if (directive.recurs === false) return [];
  const path = `status.directives.${directive.id}`;
  return directive.recurs === null
    ? [unknown('recurs-or-not', [`${path}.recurs`], { source: directiveStatus })]
    : [unknown('next-due-recorded', [`${path}.interval`, `${path}.nextDue`], { source: directiveStatus })];
}

function nextWords(again: Recurring | null, stated: DirectiveFound | null): string | null {
  const words = [...(again?.next ?? []).map(partWords), stated?.next ?? null].filter((each) => each !== null);
  return words.length === 0 ? null : [...new Set(words)].join(' or ');
}

function compliance(directive: Directive) {
  return maker(`Directive ${directive.number}`, 'compliance time');
}
