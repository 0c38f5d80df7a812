import type { Facts } from '../../graph/facts.js';
import { anyOf, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { unitsWith } from '../altitude-chain.js';
import { cfr, practice } from '../cite.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

const performance = cfr('91.227(c)');
const report = practice('a performance report shows what the aircraft really sent');

/** A report that shows a fault stands until a later one shows none. That one is owed after work is `tests-after-change`. */
export const adsBPerformance = defineRule(
  {
    id: 'ads-b-performance',
    topic: 'equipment',
    asks: 'The newest ADS-B performance report shows no fault.',
    binds: 'Aircraft with ADS-B Out in use; without any report only the record lacks one, since no rule asks for it.',
    sources: [performance, report],
    messages: {
      sound: 'The performance report of {done} shows no fault.',
      fault: 'The performance report of {done} shows a fault, and no later one is without.',
      unclear: 'Whether what the aircraft sends is sound is not known: no report that counts is recorded.',
    },
    establishes: [],
  },
  (facts) => (transmits(facts) ? [statement(facts)] : []),
);

function transmits(facts: Facts): boolean {
  return unitsWith(facts, 'ads-b-out-1090', 'ads-b-out-uat').some(({ active }) => active);
}

function statement(facts: Facts): Draft {
  const reports = accomplished(facts, ['ads-b-report'], 'aircraft', {});
  const none = unknown('report-recorded', ['status.records'], { source: report });
  return {
    subject: 'aircraft',
    clause:
      reports.length === 0
        ? none
        : anyOf(
            'a-sound-report',
            reports.map(({ clause }) => clause),
            'cannot-tell',
          ),
    messages: { met: 'sound', 'not-met': 'fault', 'cannot-tell': 'unclear', 'not-applicable': 'sound' },
    data: { done: reports[0]?.record.done.date ?? null },
    effects:
      reports.length === 0
        ? [{ stops: 'nothing', kind: 'record' }]
        : [{ stops: 'capability', capability: 'ads-b-out' }],
    remedies: [recordIt('ads-b-report')],
  };
}
