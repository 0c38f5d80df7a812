import { leastAdsBCodesWords } from '../../calculations/ads-b.js';
import { adsBCodes, adsBElements, adsBLimits } from '../../facts/ads-b.js';
import type { Facts } from '../../graph/facts.js';
import { anyOf, unknown } from '../../verdict/build.js';
import type { Draft } from '../../verdict/result.js';
import { accomplished } from '../accomplished.js';
import { unitsWith } from '../altitude-chain.js';
import { practice } from '../cite.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';

const limits = adsBLimits.value;
const wanted = leastAdsBCodesWords();
const report = practice('a performance report shows what the aircraft really sent');

/** A report that shows a fault stands until a later one shows none. That one is owed after work is `tests-after-change`. */
export const adsBPerformance = defineRule(
  {
    id: 'ads-b-performance',
    topic: 'equipment',
    asks: `The newest ADS-B performance report shows no fault: all ${adsBElements.value.length} elements of the message are sent, ${wanted}, the position every ${limits.movingEveryS} s on the move and every ${limits.standingEveryS} s standing, ${limits.latencyMostS} s late at most.`,
    binds: 'Aircraft with ADS-B Out in use; without any report only the record lacks one, since no rule asks for it.',
    sources: [adsBLimits.source, adsBElements.source, adsBCodes.nic.source, adsBCodes.sda.source, report],
    messages: {
      sound: 'The performance report of {done} shows no fault.',
      fault: `The performance report of {done} shows a fault, and no later one is without. It takes ${wanted}.`,
      unclear: `Whether what the aircraft sends is sound is not known: no report that counts is recorded. It takes ${wanted}.`,
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
