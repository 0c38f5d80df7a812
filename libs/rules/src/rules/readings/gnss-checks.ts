import { judgeInterference } from '../../calculations/interference.js';
import { interferenceTestMHz } from '../../facts/vhf.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import type { Draft } from '../../verdict/result.js';
import { gnssCapabilities, lostThrough } from '../effects.js';
import { gnssGround } from '../owed.js';
import { recordedReadings } from '../recorded-readings.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import type { AskedTest, Judge } from '../telling-entry.js';
import { tasks } from '../who-may.js';

/** That the checks are owed after work is `tests-after-change`; here what the newest of them say. */
export const gnssChecks = defineRule(
  {
    id: 'gnss-checks',
    topic: 'readings',
    asks: 'The newest function check of a satellite unit and the newest check of interference by VHF transmitters did not fail.',
    binds: 'Installed satellite units with such an entry; portable units are not installed.',
    sources: [gnssGround, interferenceTestMHz.source],
    messages: {
      within: '{item}: the interference readings of {done} lose no navigation.',
      outside: '{item}: navigation is lost while {at} transmits.',
      failed: '{item}: the {check} of {done} was entered as failed.',
      incomplete: '{item}: whether its {check} was passed cannot be told.',
      none: '{item}: no readings of its {check} to judge.',
    },
    establishes: [],
  },
  (facts) =>
    [...facts.units.values()]
      .filter((each) => each.functions.has('gnss') && !each.functions.has('portable-display'))
      .flatMap((each) => [
        statement(facts, each, 'gnss-function-check', () => null),
        statement(facts, each, 'vhf-interference-check', ({ interference }) =>
          interference === null ? null : judgeInterference(interference),
        ),
      ]),
);

type Check = 'gnss-function-check' | 'vhf-interference-check';
const words: Readonly<Record<Check, string>> = {
  'gnss-function-check': 'function check',
  'vhf-interference-check': 'interference check',
};

function statement(facts: Facts, { id, unit }: UnitFacts, check: Check, judge: Judge): Draft {
  const asked: AskedTest = { kinds: [check], subjects: [id], by: tasks.maintenance };
  const found = recordedReadings(facts, asked, judge);
  return {
    subject: `${id}:${check}`,
    clause: found.clause,
    messages: found.messages,
    data: { item: unit.name, check: words[check], ...found.data },
    effects: lostThrough(id, gnssCapabilities),
    remedies: [recordIt(check, id)],
  };
}
