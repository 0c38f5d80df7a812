import type { Clause, Leaf } from '../verdict/clause.js';
import type { Remedy } from '../verdict/result.js';
import { codeWords, lowerFirst } from '../words/codes.js';
import { factName } from '../words/fact-words.js';

/** Paths of every fact that a clause needs and nobody recorded. */
export function missingPaths(clause: Clause): readonly string[] {
  return [...new Set(asked(clause).flatMap((leaf) => leaf.missing ?? []))];
}

/** Leaves that can matter: not those behind a condition that fails whatever the flight and the day. */
export function asked(clause: Clause): readonly Leaf[] {
  if (clause.is === 'leaf') return [clause];
  if (clause.is === 'ref') return [];
  if (clause.is === 'implies') return surelyNot(clause.if) ? [] : [...asked(clause.if), ...asked(clause.then)];
  return clause.of.flatMap(asked);
}

function surelyNot(clause: Clause): boolean {
  if (clause.is === 'leaf') return clause.inside === 'not-met' && clause.outside === 'not-met';
  if (clause.is === 'all') return clause.of.some(surelyNot);
  return clause.is === 'any' && clause.of.length > 0 && clause.of.every(surelyNot);
}

/** The same in words; null when nothing is missing. */
export function missingNames(clause: Clause): string | null {
  return listed([...new Set(missingPaths(clause).map(factName))]);
}

/** The same of what may hang on a meter: where no fact is missing, all that keeps it from being told is a reading that is too old. */
export function missingOrReading(clause: Clause): string | null {
  const hangsOnMeter = asked(clause).some((leaf) => leaf.atMost !== undefined);
  return missingNames(clause) ?? (hangsOnMeter ? 'a newer meter reading' : null);
}

/** Codes as words in a row; null for an empty list. */
export function joined(codes: readonly string[]): string | null {
  return listed(codes.map((code) => lowerFirst(codeWords(code))));
}

/** Names or words in a row; null for an empty list. */
export function listed(words: readonly string[]): string | null {
  return words.length === 0 ? null : words.join(', ');
}

/** Asks for what the clause misses; nothing to ask where nothing is missing. */
export function findOut(clause: Clause, change: string, subject: string): readonly Remedy[] {
  const facts = missingPaths(clause);
  return facts.length === 0 ? [] : [{ kind: 'find-out', change, subject, facts }];
}
