import { rules } from '../rules/registry.js';
import type { Result } from '../verdict/result.js';
import { capabilityWords, codeWords, isCapability, lowerFirst, recordKindWords, upperFirst } from './codes.js';
import { dateWords, whenWords } from './dates.js';
import type { Names } from './names.js';

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
  return upperFirst(template.replace(/\{(\w+)\}/g, (_, name: string) => valueWords(data[name] ?? null, words)));
}

function valueWords(value: string | number | null, { zone, names }: MessageWords): string {
  if (value === null) return 'not recorded';
  if (typeof value === 'number') return String(value);
  if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}Z$/.test(value)) return whenWords(value, zone);
  if (/^\d{4}-\d{2}-\d{2}$/.test(value)) return dateWords(value);
  const name = names[value];
  if (name !== undefined) return name;
  if (isCapability(value)) return lowerFirst(capabilityWords(value));
  // A code of this library, such as the kind of an entry; anything with a space or a capital is text already.
  return /^[a-z0-9]+(-[a-z0-9]+)+$/.test(value) ? lowerFirst(recordKindWords(value)) : value;
}
