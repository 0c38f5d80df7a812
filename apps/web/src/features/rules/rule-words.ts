import { capabilityWords, codeWords, idWords } from '@tallywing/rules';
import { listWords } from '../../ui/words.js';
import type { RuleDetail } from './rule-query.js';

/** What a rule costs, each once: 'LPV approach, by the unit concerned'. */
export function costWords(costs: RuleDetail['costs']): readonly string[] {
  return costs.map(({ stops, capability, ofUnit, kind }) => {
    if (capability) return `${capabilityWords(capability)}${ofUnit ? ', by the unit concerned' : ''}`;
    return stops === 'nothing'
      ? `Nothing: ${kind === 'record' ? 'it belongs in the record' : 'it is advice'}`
      : `The ${stops}`;
  });
}

export interface Limit {
  readonly name: string;
  readonly amounts: string;
  readonly source: RuleDetail['values'][number]['source'];
}

/** Limits of one name and source in one line. */
export function limitsOf(values: RuleDetail['values']): readonly Limit[] {
  const groups = new Map<string, { of: RuleDetail['values'][number]; amounts: string[] }>();
  for (const each of values) {
    const key = JSON.stringify([each.label, each.source]);
    const group = groups.get(key) ?? { of: each, amounts: [] };
    groups.set(key, { ...group, amounts: [...group.amounts, `${each.amount} ${each.unit}`] });
  }
  return [...groups.values()].map(({ of, amounts }) => ({
    name: codeWords(of.label),
    amounts: listWords(amounts, 'or'),
    source: of.source,
  }));
}

/** A message with what is filled in named: '{lastGood}' to '[last good]'. */
export function messageWords(text: string): string {
  return text.replace(
    /\{(\w+)\}/g,
    (_, name: string) => `[${idWords(name.replace(/[A-Z]/g, (letter) => `-${letter}`)).toLowerCase()}]`,
  );
}
