import { ruleBook, type Result } from '@tallywing/rules';
import { dateWords } from '../ui/words.js';
import { codeWords, recordKindWords } from './words.js';

const byId = new Map(ruleBook.map((rule) => [rule.id, rule]));

/** How codes in a sentence are put into words. */
export interface MessageWords {
  /** An instant in local time. */
  readonly when: (instant: string) => string;
  /** The name of a unit or static system of this aircraft; undefined for any other text. */
  readonly name: (id: string) => string | undefined;
}

/** The sentence of a result, from its rule's own words. */
export function messageOf(result: Pick<Result, 'ruleId' | 'messageId' | 'data'>, words: MessageWords): string {
  const template = byId.get(result.ruleId)?.messages[result.messageId];
  if (template === undefined) return `${codeWords(result.ruleId)}: ${codeWords(result.messageId)}`;
  const text = template.replace(/\{(\w+)\}/g, (_, name: string) => valueWords(result.data[name] ?? null, words));
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function valueWords(value: string | number | null, words: MessageWords): string {
  if (value === null) return 'not recorded';
  if (typeof value === 'number') return String(value);
  if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}Z$/.test(value)) return words.when(value);
  if (/^\d{4}-\d{2}-\d{2}$/.test(value)) return dateWords(value);
  const name = words.name(value);
  if (name !== undefined) return name;
  // A code of the core, such as the kind of an entry; anything with a space or a capital is text already.
  return /^[a-z0-9]+(-[a-z0-9]+)+$/.test(value) ? lowerFirst(recordKindWords(value)) : value;
}

/** 'ELT battery' keeps its capitals, 'Annual inspection' does not. */
export function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
