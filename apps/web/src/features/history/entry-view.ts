import { dateWords } from '@tallywing/rules';
import { certificateWords } from '../../trade/certificates.js';
import { namedIn } from '../../trade/entry-words.js';
import { listWords } from '../../ui/words.js';
import type { EntryAnswer } from './query.js';

type Effect = NonNullable<EntryAnswer['effect']>;

type Writer = Pick<EntryAnswer, 'by' | 'certificate' | 'takenInFrom' | 'body'>;

/** 'R. Fell, Mechanic M-1: airframe'. Whoever reads a file in answers for no more than that: the record names who did the work. */
export function whoWords({ by, certificate, takenInFrom, body }: Writer): string {
  if (takenInFrom !== null)
    return `Taken in from ${filesWords(takenInFrom)} by ${by}; the record names ${namedIn(body) ?? 'nobody'}`;
  return certificate ? `${by}, ${certificateWords(certificate)}` : `${by}, no certificate on file then`;
}

function filesWords(files: readonly string[]): string {
  if (files.length === 0) return 'a file';
  return files.length > 3 ? `${files.slice(0, 2).join(', ')} and ${files.length - 2} other files` : listWords(files);
}

/** The day an entry is about, where it is another than the day it was written. */
export function aboutWords(
  { day, dayAt, recordedAt }: Pick<EntryAnswer, 'day' | 'dayAt' | 'recordedAt'>,
  when: (instant: string) => string,
): string {
  if (day === null) return 'names no day of its own';
  if (dayAt !== null) return dayAt === recordedAt ? 'of the same minute' : `as of ${when(dayAt)}`;
  return `as of ${dateWords(day)}`;
}

/** Entries of one piece of work share their effect, which stands at the last of them. */
export function togetherWords({ number, firstTogether, lastTogether }: EntryAnswer): string | null {
  if (firstTogether === lastTogether) return null;
  const work = `one work, entries ${firstTogether} to ${lastTogether}`;
  return number === lastTogether ? work : `${work}; what it did to the answers stands at entry ${lastTogether}`;
}

export interface FlightsMoved {
  readonly won: readonly string[];
  readonly lost: readonly string[];
  /** From or to "cannot tell" and not won or lost. */
  readonly other: readonly { readonly flight: string; readonly was: string; readonly is: string }[];
}

/** Which flights the work won and lost: a first answer of yes is won, a first no is no loss. */
export function flightsMoved(effect: Effect): FlightsMoved {
  const won = effect.flights.filter(({ is }) => is === 'YES').map(({ flight }) => flight);
  const lost = effect.flights.filter(({ was }) => was === 'YES').map(({ flight }) => flight);
  const other = effect.flights.flatMap(({ flight, was, is }) =>
    was === 'YES' || is === 'YES' || was === null ? [] : [{ flight, was: answerWords(was), is: answerWords(is) }],
  );
  return { won, lost, other };
}

/** What the work did, in a line: 'It lost 2 flights and opened 1 finding.' Null where it did nothing to the answers. */
export function effectWords(effect: Effect): string | null {
  const { won, lost, other } = flightsMoved(effect);
  const did = [
    count('lost', lost.length, 'flight'),
    count('won', won.length, 'flight'),
    count('changed the answer to', other.length, 'flight'),
    count('opened', effect.opened.length, 'finding'),
    count('closed', effect.closed.length, 'finding'),
  ].filter((each) => each !== '');
  return did.length === 0 ? null : `It ${listWords(did)}.`;
}

const answers: Readonly<Record<string, string>> = {
  YES: 'yes',
  NO: 'no',
  CANNOT_TELL: 'cannot tell',
  MET: 'holds',
  NOT_MET: 'does not hold',
  NOT_APPLICABLE: 'not asked',
};

/** An answer of the API as a word in a sentence. */
export function answerWords(answer: string): string {
  return answers[answer] ?? answer.toLowerCase();
}

function count(verb: string, n: number, one: string): string {
  return n === 0 ? '' : `${verb} ${n} ${n === 1 ? one : `${one}s`}`;
}
