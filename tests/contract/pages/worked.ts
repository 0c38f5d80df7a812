import { wordsOf } from '../../../apps/api/src/aircraft/words.js';
import { assess } from '../../../libs/rules/src/assess/assess.js';
import type { Result, Verdict } from '../../../libs/rules/src/verdict/result.js';
import { goodDay, trainerCatalogue } from '../../../libs/rules/testing/trainer.js';
import { aircraft, flights } from '../matrix.js';

export interface Cell {
  readonly aircraft: string;
  readonly flight: string;
  readonly verdict: Verdict;
  readonly results: readonly Result[];
}

/** Every aircraft of the matrix asked for every flight, by the rules in force. */
export function workedCells(): readonly Cell[] {
  return Object.entries(aircraft).flatMap(([name, dossier]) =>
    Object.entries(flights).map(([flight, conditions]) => {
      const { operations, results } = assess(dossier, trainerCatalogue, { instant: goodDay }, conditions);
      const verdict = operations['flight'];
      if (!verdict) throw new Error(`No verdict for ${name}, ${flight}.`);
      return { aircraft: name, flight, verdict, results };
    }),
  );
}

export function inWords({ ruleId, messageId, data }: Result): string {
  return wordsOf(ruleId, messageId, data);
}

/** For a cell of a table. */
export function escaped(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
