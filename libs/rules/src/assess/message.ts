import { rules } from '../rules/registry.js';
import type { Result } from '../verdict/result.js';
import { capabilityWords, codeWords, lowerFirst, upperFirst } from '../words/codes.js';
import { dateWords, whenWords } from '../words/dates.js';
import type { Names } from '../words/names.js';

const messagesOf = new Map(rules.map(({ meta }) => [meta.id, meta.messages]));

/** How codes in a sentence are put into words. */
export interface MessageWords {
  /** Of the aircraft's base: moments are told in its time. */
  readonly zone: string;
  readonly names: Names;
}

/** The sentence of a result, in the words of its rule; of a rule that is no longer in force it says so. */
export function messageOf(result: Pick<Result, 'ruleId' | 'messageId' | 'data'>, words: MessageWords): string {
  const { ruleId, messageId, data } = result;
  const template = messagesOf.get(ruleId)?.[messageId];
  if (template === undefined) return `${codeWords(ruleId)}: ${codeWords(messageId)} (a rule no longer in force)`;
  return upperFirst(template.replace(/\{(\w+)\}/g, (_, key: string) => valueWords(key, data[key] ?? null, words)));
}

/** Data of a sentence that hold codes of this library; of all others a text is a name, or said as somebody wrote it. */
const coded = new Set([
  'answer',
  'band',
  'capability',
  'category',
  'certificate',
  'condition',
  'cone',
  'database',
  'direction',
  'function',
  'rule',
  'signal',
  'status',
  'use',
  'what',
]);

/** Data that hold a day or a moment, or several with words between: '2026-03-31 or 4150 h'. */
const dated = new Set([
  'approvedOn',
  'asOf',
  'batteryGoodTo',
  'done',
  'expires',
  'fitted',
  'fittedOn',
  'releasedOn',
  'inspected',
  'inspectionGoodTo',
  'lastDay',
  'lastGood',
  'loaded',
  'lookedAt',
  'next',
  'opened',
  'read',
  'removed',
  'retire',
  'revisedOn',
  'since',
  'until',
]);

/** What is measured in another sign than its code. */
const measures: Readonly<Record<string, string>> = { mohm: 'milliohm', deg: 'degrees' };

function valueWords(key: string, value: string | number | null, { zone, names }: MessageWords): string {
  if (value === null) return 'not recorded';
  if (typeof value === 'number') return String(value);
  if (dated.has(key)) return daysWords(value, zone);
  if (coded.has(key)) return codeInSentence(value);
  return names[value] ?? measures[value] ?? value;
}

function daysWords(text: string, zone: string): string {
  return text.replace(/\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}Z)?/g, (day, time?: string) =>
    time === undefined ? dateWords(day) : whenWords(day, zone),
  );
}

/** Anything with a space or a capital is text already. */
function codeInSentence(value: string): string {
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(value) ? lowerFirst(capabilityWords(value)) : value;
}
