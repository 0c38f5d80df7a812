import type { Directive } from '../dossier/status.js';
import type { Facts } from '../graph/facts.js';
import { allOf, anyOf, met, notApplicable, notMet, unknown, within } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { Due } from '../verdict/result.js';
import { cfr, maker } from './cite.js';
import { endOfDay } from './periodic.js';

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
  const inTime = directive.nextDue === null ? null : untilDue(facts, directive, directive.nextDue);
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

type NextDue = NonNullable<Directive['nextDue']>;

function untilDue(facts: Facts, directive: Directive, next: NextDue): Clause {
  const source = maker(`Directive ${directive.number}`, 'compliance time');
  const path = `status.directives.${directive.id}.nextDue`;
  const day =
    next.date === null
      ? unknown('due-day-recorded', [`${path}.date`], { source })
      : within('before-due-day-ends', { before: endOfDay(facts, next.date) }, { source });
  const hours =
    next.meter === null || next.at === null
      ? unknown('due-hours-recorded', [next.meter === null ? `${path}.meter` : `${path}.at`], { source })
      : within('at-most-due-hours', { atMost: { [next.meter]: next.at } }, { source });
  if (next.by === 'date') return day;
  if (next.by === 'meter') return hours;
  return next.by === 'first'
    ? allOf('whichever-first', [day, hours], 'cannot-tell')
    : anyOf('whichever-last', [day, hours], 'cannot-tell');
}

export function directiveDue(facts: Facts, number: string, next: NextDue): Due {
  const byDay = next.by !== 'meter' && next.date !== null;
  const byHours = next.by !== 'date' && next.meter !== null && next.at !== null;
  return {
    what: number,
    ...(byDay && next.date !== null ? { lastGoodDay: next.date, lapses: endOfDay(facts, next.date) } : {}),
    ...(byHours && next.meter !== null && next.at !== null ? { meter: next.meter, at: next.at } : {}),
    combine: next.by === 'last' ? 'last' : 'first',
  };
}

/** The day, the hours, or both, as a message shows them. */
export function dueWords(next: NextDue): string {
  const day = next.date ?? 'day not recorded';
  const hours = next.at === null ? 'hours not recorded' : `${next.at / 100} h`;
  if (next.by === 'date') return day;
  return next.by === 'meter' ? hours : `${day} or ${hours}`;
}
