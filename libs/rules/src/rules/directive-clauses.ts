import type { Directive } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, met, notApplicable, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import { cfr, maker } from './cite.js';
import { untilDue } from './due-point.js';

export const operateInCompliance = cfr('39.7, 91.403(a)');
export const directiveStatus = cfr('91.417(a)(2)(v)');

/** Does it bind, was it done by an entry that was seen, and is it in time? */
export function directiveClause(facts: Facts, directive: Directive): Clause {
  const { configuration, status } = facts.dossier;
  const path = `status.directives.${directive.id}`;
  const there =
    [directive.id, 'aircraft'].includes(directive.subject) ||
    facts.units.has(directive.subject) ||
    configuration.staticSystems.some((each) => each.id === directive.subject) ||
    configuration.equipment.some((each) => each.item === directive.subject);
  if (!there) return notApplicable('subject-fitted', { source: operateInCompliance });
  if (directive.state === 'not-applicable')
    return directive.reason === null
      ? unknown('reason-why-not-applicable', [`${path}.reason`], { source: operateInCompliance })
      : notApplicable('does-not-apply', { source: operateInCompliance });
  const stated = maker(`Directive ${directive.number}`, 'compliance time');
  const inTime = directive.nextDue === null ? null : untilDue(facts, directive.nextDue, `${path}.nextDue`, stated);
  if (directive.state === 'open')
    return inTime ?? notMet('complied-with-before-further-flight', { source: operateInCompliance });
  const record = status.records.find((each) => each.id === directive.recordId);
  const evidence = record ? { source: directiveStatus, evidence: [record.id] } : { source: directiveStatus };
  const entry = !record
    ? unknown('entry-recorded', [`${path}.recordId`], evidence)
    : record.evidence === 'entry-seen'
      ? met('entry-seen', evidence)
      : notMet('entry-seen', evidence);
  const method =
    directive.method === null
      ? unknown('method-recorded', [`${path}.method`], evidence)
      : met('method-recorded', evidence);
  return allOf('complied-with', [entry, method, ...(inTime === null ? [] : [inTime])], 'cannot-tell');
}
