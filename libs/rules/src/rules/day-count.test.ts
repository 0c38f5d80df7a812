import { expect, it } from 'vitest';
import { pilot, recordOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { Policy } from '../catalogue/policy.js';
import { factsOf } from '../graph/facts.js';
import { met, unknown } from '../verdict/build.js';
import { cfr } from './cite.js';
import { countedInDays } from './day-count.js';

/** Through which day checks of these days, newest first, are good for thirty days. */
function lastGood(checks: readonly string[], ...policies: readonly Policy[]) {
  const counted = checks.map((on) => ({
    record: recordOf({ kind: 'vor-check', subjects: ['nav1'], on, agency: pilot, enRoute: true }),
    clause: met('entry-counts'),
  }));
  const facts = factsOf(dossierOf(), { ...catalogueOf(), policies });
  const asked = { what: 'vor-check', label: 'within-days', source: cfr('91.171(a)(2)'), none: unknown('none', []) };
  return countedInDays(facts, counted, 30, asked).lastGood;
}
const set = (version: number, from: string, count: 'usual' | 'earlier'): Policy => ({
  kind: 'day-count',
  version,
  from,
  body: { count },
});

// Thirty days from 1 February 2026: through 3 March, or by the policy of a house a day less.
it.each<[string, readonly Policy[], string]>([
  ['no policy', [], '2026-03-03'],
  ['a policy of the usual count', [set(1, '2026-02-01', 'usual')], '2026-03-03'],
  ['a day less since before', [set(1, '2026-02-01', 'earlier')], '2026-03-02'],
  ['a day less from the last day itself', [set(1, '2026-03-03', 'earlier')], '2026-03-02'],
  ['a day less from the day after', [set(1, '2026-03-04', 'earlier')], '2026-03-03'],
  ['a day less until the last day', [set(1, '2026-02-01', 'earlier'), set(2, '2026-03-03', 'usual')], '2026-03-03'],
  ['a day less until the day after it', [set(1, '2026-02-01', 'earlier'), set(2, '2026-03-04', 'usual')], '2026-03-02'],
])('%s', (_, policies, expected) => {
  expect(lastGood(['2026-02-01'], ...policies)).toBe(expected);
});

it('counts from when it was done, however late that was', () => {
  expect(lastGood(['2026-02-10', '2026-01-01'])).toBe('2026-03-12');
});
