import { assess } from '../../../libs/rules/src/assess/assess.js';
import type { Dossier } from '../../../libs/rules/src/dossier/dossier.js';
import type { Result, Verdict } from '../../../libs/rules/src/verdict/result.js';
import { messageOf } from '../../../libs/rules/src/assess/message.js';
import { installedNames } from '../../../libs/rules/src/words/names.js';
import { goodDay, trainerCatalogue } from '../../../libs/rules/testing/trainer.js';
import { aircraft, flights } from '../matrix.js';

export interface Cell {
  readonly aircraft: string;
  readonly dossier: Dossier;
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
      return { aircraft: name, dossier, flight, verdict, results };
    }),
  );
}

export function inWords(result: Result, { dossier: { configuration } }: Cell): string {
  return messageOf(result, { zone: configuration.aircraft.base.zone, names: installedNames(configuration) });
}

/** For a cell of a table. */
export function escaped(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
