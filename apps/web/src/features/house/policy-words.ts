import { codeWords } from '@tallywing/rules';
import { sourceStatusWords, type SourceStatusName } from '../../ui/source.js';
import { countWords, listWords } from '../../ui/words.js';
import type { HousePolicy } from './query.js';

type Version = HousePolicy['versions'][number];

export interface PolicyText {
  readonly title: string;
  /** What it is about, and what counts where the house sets nothing. */
  readonly about: string;
}

export const policyTexts: Readonly<Record<string, PolicyText>> = {
  'reading-age': {
    title: 'Age of meter readings',
    about:
      'For how many days a meter reading carries limits in hours. After that, what hangs on hours cannot be told. An aircraft may state fewer days, not more. Unset: as the aircraft states, else 31 days.',
  },
  'day-count': {
    title: 'Count of days',
    about:
      '“Within the preceding 30 days” (VOR check): the 30th day after the check is inside by our reading of the text. A house may count a day less, never more. Unset: the 30th day is inside.',
  },
  'weak-source': {
    title: 'Sources that want a say-so',
    about:
      'A yes that rests on a source of these kinds counts only when a named person has said so for that aircraft. Unset: it counts, and says what it rests on.',
  },
};

/** What one version asks, in a sentence. */
export function policyWords(kind: string, body: Version['body']): string {
  const value = body as Readonly<Record<string, unknown>>;
  if (kind === 'reading-age') {
    const notice = value['noticeDays'];
    return `A reading counts for ${countWords(Number(value['days']), 'day')}${
      notice === null ? '' : `; remarked on after ${countWords(Number(notice), 'day')}`
    }`;
  }
  if (kind === 'day-count')
    return value['count'] === 'earlier' ? 'The 29th day after is the last' : 'The 30th day after is the last';
  const statuses = value['statuses'] as readonly string[];
  if (statuses.length === 0) return 'None wants a say-so';
  const by = (value['by'] as readonly string[]).map((each) => codeWords(each).toLowerCase());
  return `${listWords(statuses.map((each) => sourceStatusWords[each as SourceStatusName] ?? each))}: say-so of ${listWords(by).replace(' and ', ' or ')}`;
}

export interface PolicyStanding {
  readonly now: Version | null;
  /** Set already, for a day to come; soonest first. */
  readonly coming: readonly Version[];
  /** Replaced, newest first. */
  readonly earlier: readonly Version[];
}

/** The versions by what they are today. A version set later for the same or an earlier day takes the place of one to come. */
export function standingOf({ versions, inForce }: HousePolicy): PolicyStanding {
  const now = versions.find(({ version }) => version === inForce) ?? null;
  const later = versions.filter(({ version, from }) => version > (inForce ?? 0) && (now === null || from > now.from));
  const coming = later
    .filter((each) => !later.some((other) => other.version > each.version && other.from <= each.from))
    .sort((a, b) => (a.from < b.from ? -1 : 1));
  const current = new Set([...(now === null ? [] : [now]), ...coming]);
  return { now, coming, earlier: versions.filter((each) => !current.has(each)) };
}
