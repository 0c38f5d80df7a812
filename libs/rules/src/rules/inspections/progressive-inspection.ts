import { calendarMonths } from '../../facts/intervals.js';
import type { Facts } from '../../graph/facts.js';
import { allOf, implies, met, notMet, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { cfr } from '../cite.js';
import { dueOn, withinMonths } from '../periodic.js';
import { findEntry, findOut, recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { entryOfInspection, totalTimeEntered } from '../total-time.js';
import { tasks } from '../who-may.js';

const interval = calendarMonths.progressive;

/** Which phase falls due when is the program's own schedule; what the rule itself fixes is the whole aircraft each 12 calendar months. */
export const progressiveInspection = defineRule(
  {
    id: 'progressive-inspection',
    topic: 'inspections',
    asks: 'Within the preceding 12 calendar months the progressive program inspected the whole aircraft, under a named procedures manual.',
    binds: 'Aircraft under a progressive inspection program; not the others.',
    sources: [interval.source, tasks.progressive.source, entryOfInspection],
    messages: {
      current: 'The progressive program was completed on {done}, good through {lastGood}.',
      lapsed: 'No complete progressive inspection that counts within the preceding 12 calendar months.',
      unclear: 'Whether the progressive program is complete cannot be told from the record.',
      'not-asked': 'The aircraft is under no progressive program.',
    },
    establishes: [],
  },
  (facts) => {
    const { program } = facts.dossier.configuration.aircraft;
    const extra = { source: interval.source };
    const binds = program?.kind === 'progressive';
    const path = 'configuration.aircraft.program.document';
    const entries = accomplished(facts, ['progressive-complete'], 'aircraft', {
      by: tasks.progressive,
      outcomes: ['approved', 'passed'],
      also: (record) => totalTimeEntered(facts, record),
    });
    const none = unknown('complete-inspection-recorded', ['status.records'], extra);
    const found = withinMonths(facts, entries, interval.value, interval.source, none);
    const draft: Draft = {
      subject: 'aircraft',
      clause: implies(
        binds ? met('progressive-program', extra) : notMet('progressive-program', extra),
        allOf('program-followed', [found.clause, procedures(facts, path)], 'cannot-tell'),
      ),
      messages: { met: 'current', 'not-met': 'lapsed', 'cannot-tell': 'unclear', 'not-applicable': 'not-asked' },
      data: { done: found.done, lastGood: found.lastGood },
      effects: [{ stops: 'capability', capability: 'fly' }],
      due: binds ? dueOn(facts, 'progressive-complete', found.lastGood) : [],
      remedies: [
        recordIt('progressive-complete'),
        findOut('aircraft.amend', 'aircraft', path),
        ...(entries.length === 0 ? [findEntry('progressive-complete')] : []),
      ],
    };
    return [draft];
  },
);

function procedures(facts: Facts, path: string) {
  const extra = { source: cfr('91.409(d)(2)') };
  const named = facts.dossier.configuration.aircraft.program?.document ?? null;
  return named === null ? unknown('procedures-manual-named', [path], extra) : met('procedures-manual-named', extra);
}
