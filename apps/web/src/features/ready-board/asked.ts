import { localTimeAt } from '@tallywing/rules';
import { instantAt } from '../../trade/time.js';
import type { BoardAsked } from './query.js';

/** What the board is asked, as it stands in the address: a link shows another person the same question. */
export interface Asked {
  /** Local time of the zone, '' for now. */
  readonly at: string;
  readonly hours: string;
  readonly profile: string;
  readonly ready: string;
  readonly operator: string;
  readonly base: string;
  readonly text: string;
}

const names = ['at', 'hours', 'profile', 'ready', 'operator', 'base', 'text'] as const;

export function readAsked(params: URLSearchParams): Asked {
  return Object.fromEntries(names.map((name) => [name, params.get(name) ?? ''])) as unknown as Asked;
}

export function writeAsked(asked: Asked): URLSearchParams {
  return new URLSearchParams(names.filter((name) => asked[name] !== '').map((name) => [name, asked[name]]));
}

const readyCodes: Readonly<Record<string, 'YES' | 'NO' | 'CANNOT_TELL'>> = {
  yes: 'YES',
  no: 'NO',
  'cannot-tell': 'CANNOT_TELL',
};

/** The question in the form of the API. A filter by answer needs a profile; without one it is left out. */
export function variablesOf(asked: Asked, zone: string): BoardAsked {
  const ready = asked.profile === '' ? undefined : readyCodes[asked.ready];
  const hours = hoursOf(asked.hours);
  return {
    at: asked.at === '' ? null : instantAt(asked.at, zone),
    hoursAhead: hours === null || Number.isNaN(hours) ? null : hours,
    profile: asked.profile || null,
    filter: {
      operatorId: asked.operator || null,
      baseId: asked.base || null,
      text: asked.text.trim() || null,
      ready: ready ? [ready] : null,
    },
  };
}

/** Null for nothing typed, NaN for what is no number of hours. */
export function hoursOf(text: string): number | null {
  const plain = text.trim();
  if (plain === '') return null;
  return /^\d{1,4}(\.\d{1,2})?$/.test(plain) ? Number(plain) : NaN;
}

/** The next full hour at the base: what a person usually means by "later today". */
export function soon(now: string, zone: string): string {
  return `${localTimeAt(now, zone).slice(0, 13)}:00`;
}
