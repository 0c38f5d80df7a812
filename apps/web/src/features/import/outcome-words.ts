import { countWords } from '../../ui/words.js';
import type { Difference, ImportAnswer, Report } from './query.js';

type Progress = ImportAnswer['progress'];

const steps: Readonly<Record<string, string>> = {
  reading: 'Reading the files',
  checking: 'Checking aircraft',
  loading: 'Loading aircraft',
};

/** 'Loading aircraft: 40 of 500'. */
export function progressWords({ step, done, total }: Progress): string {
  const what = steps[step] ?? step;
  return total > 0 ? `${what}: ${done} of ${total}` : what;
}

/** What came of an import, and what is in although it did not come to its end. */
export function outcomeWords({ state, progress, report }: Pick<ImportAnswer, 'state' | 'progress' | 'report'>): string {
  const { step, done, total } = progress;
  const partly = step === 'loading' && done > 0 && done < total;
  const loaded = partly
    ? `${countWords(done, 'aircraft', 'aircraft')} of ${total} ${done === 1 ? 'is' : 'are'} in, each whole; the same files again go on with the rest.`
    : 'Nothing was loaded.';
  switch (state) {
    case 'CHECKED':
      return 'Dry run done. Nothing was loaded.';
    case 'LOADED':
      return 'Loaded, all of it.';
    case 'REFUSED':
      return report !== null && report.badCount > 0 ? 'Nothing was loaded: something in the files is bad.' : loaded;
    case 'FAILED':
      return `Something went wrong on our side. ${loaded}`;
    case 'INTERRUPTED':
      return `It was stopped or cut off. ${loaded}`;
    default:
      return progressWords(progress);
  }
}

/** A row of a file, as the API names it in a decision. */
export function rowOf({ file, line }: Pick<Difference, 'file' | 'line'>): string {
  return `${file}:${line}`;
}

/** What the API is told about differences; empty where there are none. */
export function decisionOf({ differences }: Pick<Report, 'differences'>, taken: ReadonlySet<string>): string {
  if (differences.length === 0) return '';
  return JSON.stringify([...taken].filter((row) => differences.some((each) => rowOf(each) === row)));
}
