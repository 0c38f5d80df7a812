import { calendarMonths } from '../../facts/intervals.js';
import type { Facts } from '../../graph/facts.js';
import { implies, notMet, unknown } from '../../verdict/build.js';
import type { Leaf } from '../../verdict/clause.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { cfr } from '../cite.js';
import { findOut } from '../gaps.js';
import { boundWithoutProgram } from '../inspection-program.js';
import { dueOn, withinMonths } from '../periodic.js';
import { defineRule } from '../rule.js';
import { entryOfInspection, totalTimeEntered } from '../total-time.js';
import { tasks } from '../who-may.js';

const interval = calendarMonths.annual;

/** Aircraft under 91.409(c), (d) or (e) follow another regime. Single-engine turboprops are not named in (e) and follow (a). */
export const annualInspection = defineRule(
  {
    id: 'annual-inspection',
    topic: 'inspections',
    asks: 'Within the preceding 12 calendar months an annual inspection with approval for return to service, an inspection for the issue of an airworthiness certificate, or the last complete inspection of a progressive program that was left; the entry gives the total time in service.',
    binds:
      'Aircraft with a standard or other certificate that are not excepted by 91.409(c) and follow no progressive program, no approved program of part 125 or 135, and no selected program that 91.409(e) lets them select; not experimental and light-sport aircraft.',
    sources: [interval.source, tasks.annualInspection.source, entryOfInspection, cfr('91.409(c), (d), (e)')],
    messages: {
      current: 'Annual inspection of {done}, good through {lastGood}.',
      lapsed: 'No annual inspection that counts within the preceding 12 calendar months.',
      unclear: 'Whether an annual inspection counts cannot be told from the record.',
      excepted: 'The annual inspection does not bind this aircraft.',
    },
    establishes: [],
  },
  (facts) => {
    // A complete progressive inspection carries 12 calendar months after the program is left (91.409(d)).
    const entries = accomplished(
      facts,
      ['annual-inspection', 'airworthiness-certificate-inspection', 'progressive-complete'],
      'aircraft',
      {
        by: tasks.annualInspection,
        outcomes: ['approved'],
        also: (record) => totalTimeEntered(facts, record),
      },
    );
    const { clause, done, lastGood } = withinMonths(
      facts,
      entries,
      interval.value,
      interval.source,
      unknown('annual-recorded', ['status.records'], { source: interval.source }),
    );
    const bound = binds(facts);
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(bound, clause),
      messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'excepted' },
      data: { done, lastGood },
      effects: [{ stops: 'capability', capability: 'fly' }],
      due: dueOn(facts, 'annual-inspection', lastGood),
      remedies: [
        { kind: 'do', change: 'record.add', subject: 'annual-inspection', facts: [] },
        ...(entries.length === 0
          ? [
              {
                kind: 'find-out' as const,
                change: 'record.add',
                subject: 'annual-inspection',
                facts: ['status.records'],
              },
            ]
          : []),
        ...findOut(bound, 'aircraft.amend', 'aircraft'),
      ],
    };
    return [draft];
  },
);

function binds(facts: Facts): Leaf {
  const { certificate } = facts.dossier.configuration.aircraft;
  const source = cfr('91.409(c)');
  if (certificate === null) return unknown('bound-by-91.409(a)', ['configuration.aircraft.certificate'], { source });
  if (certificate === 'experimental' || certificate === 'light-sport' || certificate === 'provisional')
    return notMet('bound-by-91.409(a)', { source });
  return boundWithoutProgram(facts, 'bound-by-91.409(a)');
}
