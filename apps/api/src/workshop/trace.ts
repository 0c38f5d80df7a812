import { standing } from './test-sets.data.js';
import type { Calibration } from './test-sets.data.js';

export interface Span {
  /** Day of the last good calibration; null: none is known. */
  readonly from: string | null;
  /** Last day that leans on the set; null: no end yet. */
  readonly to: string | null;
}

/**
 * Which days' work leans on a test set found out of tolerance. Nobody knows when it went out, so it is all of it since the set
 * was last known good; that day itself counts, because nobody knows which came first. Where the set was put right at
 * the check, the check's day is the last; else work goes on leaning on it until the next calibration.
 */
export function suspectSpan(calibrations: readonly Calibration[], found: Calibration): Span {
  const good = standing(calibrations).filter(({ id, goodUntil }) => id !== found.id && goodUntil !== null);
  const before = good.map(({ checkedOn }) => checkedOn).filter((day) => day < found.checkedOn);
  const after = good.map(({ checkedOn }) => checkedOn).filter((day) => day >= found.checkedOn);
  return {
    from: before.length === 0 ? null : before.reduce((a, b) => (a > b ? a : b)),
    to:
      found.goodUntil !== null ? found.checkedOn : after.length === 0 ? null : after.reduce((a, b) => (a < b ? a : b)),
  };
}
