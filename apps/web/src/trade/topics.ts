import { codeWords } from '@tallywing/rules';

/** Topics of the rules as the API writes them. */
export const topicCodes = [
  'AUTHORITY',
  'INSTALLATION',
  'INTERFACES',
  'INDICATION',
  'EQUIPMENT',
  'INSPECTIONS',
  'READINGS',
  'AFTER_WORK',
  'MASS',
  'ELECTRICAL',
  'DATABASES',
  'DEFECTS',
] as const;

export type TopicCode = (typeof topicCodes)[number];

export const topicOptions = topicCodes.map((id) => ({ id, name: codeWords(id) }));

/** The code itself if it is one: what stands in an address may be anything. */
export function topicOf(text: string): TopicCode | null {
  return topicCodes.find((code) => code === text) ?? null;
}
