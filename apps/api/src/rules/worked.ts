import { createRequire } from 'node:module';
import { messageOf } from '@tallywing/rules';
import type { RuleMeta, Worked } from '@tallywing/rules';

const load = createRequire(import.meta.url);

/** Cases name their things by ids and tell moments in UTC. */
const asTheyAre = { zone: 'UTC', names: {} };

/** What the cases of a rule's own test show, as the rule library ships it, in words. */
export function workedOf(rule: RuleMeta) {
  const { costs, values, cases } = load(`@tallywing/rules/worked/${rule.id}.json`) as Worked;
  return {
    messages: Object.entries(rule.messages).map(([id, text]) => ({ id, text })),
    costs: costs.map((cost) => ({ ofUnit: false, ...cost })),
    values: values.map(({ label, limit, source }) => ({ label, ...limit, source })),
    cases: cases.map(({ name, outcome, message, data }) => ({
      name,
      outcome: outcome === 'none' ? null : outcome,
      text: message === null ? null : messageOf({ ruleId: rule.id, messageId: message, data }, asTheyAre),
    })),
  };
}
