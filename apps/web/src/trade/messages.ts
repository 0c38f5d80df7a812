import { ruleBook, type Result } from '@tallywing/rules';
import { dateWords } from '../ui/words.js';
import { codeWords } from './words.js';

const byId = new Map(ruleBook.map((rule) => [rule.id, rule]));

/** The sentence of a result, from its rule's own words. `when` turns an instant into local time. */
export function messageOf(
  result: Pick<Result, 'ruleId' | 'messageId' | 'data'>,
  when: (instant: string) => string,
): string {
  const template = byId.get(result.ruleId)?.messages[result.messageId];
  if (template === undefined) return `${codeWords(result.ruleId)}: ${codeWords(result.messageId)}`;
  return template.replace(/\{(\w+)\}/g, (_, name: string) => valueWords(result.data[name] ?? null, when));
}

function valueWords(value: string | number | null, when: (instant: string) => string): string {
  if (value === null) return 'not recorded';
  if (typeof value === 'number') return String(value);
  if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}Z$/.test(value)) return when(value);
  return /^\d{4}-\d{2}-\d{2}$/.test(value) ? dateWords(value) : value;
}
