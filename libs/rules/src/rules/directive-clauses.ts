import type { Directive } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, met, notApplicable, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { accomplished } from './accomplished.js';
import { cfr, maker } from './cite.js';
import { untilDue } from './due-point.js';
import { isRecorded, wasUnit } from './subjects.js';
import { tasks } from './who-may.js';

export const operateInCompliance = cfr('39.7, 91.403(a)');
export const directiveStatus = cfr('91.417(a)(2)(v)');

/** Does it bind, was it done by an entry that counts, and is it in time? */
export function directiveClause(facts: Facts, directive: Directive): Clause {
  const path = `status.directives.${directive.id}`;
  const source = operateInCompliance;
  if (directive.state === 'not-applicable' && directive.reason !== null)
    return notApplicable('does-not-apply', { source });
  if (directive.subject !== directive.id && !isRecorded(facts, directive.subject))
    return wasUnit(facts, directive.subject)
      ? notApplicable('subject-fitted', { source })
      : unknown('subject-fitted', [`${path}.subject`], { source });
  if (directive.state === 'not-applicable') return unknown('reason-why-not-applicable', [`${path}.reason`], { source });
  const stated = maker(`Directive ${directive.number}`, 'compliance time');
  const inTime = directive.nextDue === null ? null : untilDue(facts, directive.nextDue, `${path}.nextDue`, stated);
  if (directive.state === 'open') return inTime ?? notMet('complied-with-before-further-flight', { source });
  const method =
    directive.method === null
      ? unknown('method-recorded', [`${path}.method`], { source: directiveStatus })
      : met('method-recorded', { source: directiveStatus });
  const parts = [complianceEntry(facts, directive), method, ...(inTime === null ? [] : [inTime])];
  return allOf('complied-with', parts, 'cannot-tell');
}

/** The entry that the directive names: of this directive, though it may cover others, and no newer one failed. */
export function complianceEntry(facts: Facts, directive: Directive): Clause {
  const named = facts.dossier.status.records.find((each) => each.id === directive.recordId);
  if (!named)
    return unknown('entry-recorded', [`status.directives.${directive.id}.recordId`], { source: directiveStatus });
  const counted = accomplished(facts, ['directive-compliance'], directive.id, { by: tasks.maintenance });
  return (
    counted.find((each) => each.record === named)?.clause ??
    notMet('entry-of-this-directive', { source: directiveStatus, evidence: [named.id] })
  );
}
