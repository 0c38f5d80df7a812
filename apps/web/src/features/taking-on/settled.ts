import type { Judged } from '../../trade/effect.js';
import { countWords } from '../../ui/words.js';

/** Answers that could not be told and now can: how many of them well, how many not. */
export interface Settled {
  readonly well: number;
  readonly badly: number;
}

/** An answer is settled when no flight leaves it open; it is settled badly when it is not met for one of them. */
export function settledBy(before: Judged, after: Judged): Settled {
  const open = outcomesOf(before);
  const then = outcomesOf(after);
  let well = 0;
  let badly = 0;
  for (const [key, outcomes] of open) {
    const now = then.get(key) ?? new Set();
    if (!outcomes.has('cannot-tell') || now.has('cannot-tell')) continue;
    if (now.has('not-met')) badly += 1;
    else well += 1;
  }
  return { well, badly };
}

/** 'This would settle 5 answers, 2 of them as not met.' */
export function settledWords({ well, badly }: Settled): string {
  if (well + badly === 0) return 'This would settle no answer by itself.';
  const rest = badly === 0 ? '' : badly === 1 && well === 0 ? ', as not met' : `, ${badly} of them as not met`;
  return `This would settle ${countWords(well + badly, 'answer')}${rest}.`;
}

function outcomesOf({ byProfile }: Judged): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map<string, Set<string>>();
  for (const { results } of byProfile)
    for (const { key, outcome } of results) found.set(key, (found.get(key) ?? new Set()).add(outcome));
  return found;
}
