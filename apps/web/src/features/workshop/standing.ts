import { dateWords } from '@tallywing/rules';
import type { Status } from '../../ui/status-words.js';
import type { Agency, Calibration, TestSet, Trace } from './query.js';

export interface Standing {
  readonly status: Status;
  readonly word: string;
  /** The days behind the word; '' where there are none. */
  readonly days: string;
}

/** How a test set stands on a day. */
export function setStanding(set: TestSet, today: string): Standing {
  if (!set.inUse) return { status: 'not-judged', word: 'Not in use', days: '' };
  const latest = set.calibrations.find(({ struck }) => struck === null);
  if (latest === undefined) return { status: 'cannot-tell', word: 'None entered', days: '' };
  const { checkedOn, goodUntil } = latest;
  if (goodUntil === null)
    return { status: 'no', word: 'Out of tolerance', days: `found on ${dateWords(checkedOn)}, not put right` };
  const days = `through ${dateWords(goodUntil)}`;
  return goodUntil < today ? { status: 'no', word: 'Run out', days } : { status: 'yes', word: 'Calibrated', days };
}

/** Whether an agency is offered for work on a day. */
export function agencyStanding({ inUse, heldFrom, heldUntil }: Agency, today: string): Standing {
  if (!inUse) return { status: 'not-judged', word: 'Not in use', days: '' };
  if (heldUntil !== null && heldUntil < today)
    return { status: 'no', word: 'No longer held', days: `through ${dateWords(heldUntil)}` };
  if (heldFrom !== null && heldFrom > today)
    return { status: 'not-judged', word: 'Not yet held', days: `from ${dateWords(heldFrom)}` };
  return {
    status: 'yes',
    word: 'Held',
    days: heldUntil === null ? 'no end recorded' : `through ${dateWords(heldUntil)}`,
  };
}

export function asFoundWords({ asFound }: Calibration): string {
  if (asFound === null) return 'not stated';
  return asFound === 'IN_TOLERANCE' ? 'in tolerance' : 'out of tolerance';
}

/** Which days' work leans on the set, and why those. */
export function spanWords({ from, to, calibration }: Pick<Trace, 'from' | 'to' | 'calibration'>): string {
  const start =
    from === null
      ? 'No good calibration is entered from before, so every entry counts'
      : `The last good calibration before was on ${dateWords(from)}, so entries count from that day`;
  if (to === null) return `${start}; the set was not put right, so they count up to today.`;
  return to === calibration.checkedOn
    ? `${start} through ${dateWords(to)}, when it was put right.`
    : `${start} through ${dateWords(to)}, the day of its next good calibration.`;
}
