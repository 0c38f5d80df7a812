import { judgeBonding } from '../../calculations/bonding.js';
import { bondLimits } from '../../facts/bonding.js';
import type { Draft } from '../../verdict/result.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { tasks } from '../who-may.js';

/** What was measured after work; a bond out of its limit holds up the release, and grounds nothing that flew before. */
export const bondingReading = defineRule(
  {
    id: 'bonding-reading',
    topic: 'readings',
    asks: 'Every bond measured in the newest bonding check is within its limit.',
    binds: 'Aircraft whose newest bonding check carries readings; it holds up the release of work.',
    sources: Object.values(bondLimits).map(({ source }) => source),
    messages: {
      within: 'The bonds measured on {done} are within their limits.',
      outside: '{what} at {at}: {value} {unit}, the limit is {limit}.',
      failed: 'The bonding check of {done} was entered as failed.',
      incomplete: 'The bonding check of {done} has a bond without a reading.',
      none: 'No bonding check with readings.',
    },
    establishes: [],
  },
  (facts) => {
    const found = recordedReadings(
      facts,
      { kinds: ['bonding-check'], subjects: ['aircraft'], by: tasks.maintenance },
      ({ bonding }) => (bonding === null ? null : judgeBonding(bonding)),
    );
    const draft: Draft = {
      subject: 'aircraft',
      clause: found.clause,
      messages: found.messages,
      data: found.data,
      effects: [{ stops: 'release' }],
      remedies: [recordIt('bonding-check')],
    };
    return [draft];
  },
);
