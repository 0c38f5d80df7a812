import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import { instantOf, minutesOf } from '../time/instant.js';
import type { Horizon, Ready, Standing, Window } from '../verdict/result.js';

/** One continuous stretch of one verdict along a projected use. */
export interface Stretch {
  readonly from: Instant;
  /** Exclusive. */
  readonly to: Instant;
  readonly ready: Ready;
  readonly standing: Standing;
  readonly because: readonly string[];
  readonly endsBecause: readonly string[];
  /** True where only the projected use of hours puts a date on the end. */
  readonly projected: boolean;
}

const minutesPerMonth = 43_830; // 365.25 days / 12

/**
 * The path that an aircraft takes through its rectangles when it flies `perMonth` hours a month from the start of the horizon on.
 * With no use given the path stays at the present hours. Ask for a horizon that assumes readings in time.
 */
export function timeline(horizon: Horizon, perMonth: Centihours | null): readonly Stretch[] {
  const start = minutesOf(horizon.from);
  const end = minutesOf(horizon.to);
  const rate = (perMonth ?? 0) / minutesPerMonth;
  const stretches: Stretch[] = [];
  let minute = start;
  while (minute < end) {
    const hours = Math.floor((minute - start) * rate);
    const window = windowAt(horizon.windows, instantOf(minute), hours);
    if (!window) break;
    // The path leaves the rectangle at its right edge, or where the hours pass its top.
    const right = Math.min(minutesOf(window.to), end);
    const top =
      window.upTo === null || rate === 0 ? Infinity : Math.max(minute + 1, start + Math.ceil((window.upTo + 1) / rate));
    const until = Math.min(right, top);
    const projected = until < right;
    const above = projected ? windowAt(horizon.windows, instantOf(until), Math.floor((until - start) * rate)) : null;
    push(stretches, {
      from: instantOf(minute),
      to: instantOf(until),
      ready: window.ready,
      standing: window.standing,
      because: window.ready === 'yes' ? [] : window.because,
      endsBecause: projected ? (above?.ready === 'yes' ? [] : (above?.because ?? [])) : window.endsBecause,
      projected,
    });
    minute = until;
  }
  return stretches;
}

function windowAt(windows: readonly Window[], instant: Instant, hours: Centihours): Window | undefined {
  return windows.find(
    (each) =>
      each.from <= instant && instant < each.to && each.above < hours && (each.upTo === null || hours <= each.upTo),
  );
}

function push(stretches: Stretch[], next: Stretch): void {
  const last = stretches.at(-1);
  if (
    last &&
    last.ready === next.ready &&
    last.standing === next.standing &&
    JSON.stringify(last.because) === JSON.stringify(next.because)
  ) {
    stretches[stretches.length - 1] = { ...next, from: last.from };
  } else stretches.push(next);
}
