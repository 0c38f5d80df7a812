import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Worked } from '../../libs/rules/src/assess/worked.js';
import { rules } from '../../libs/rules/src/rules/registry.js';
import type { RuleMeta } from '../../libs/rules/src/rules/rule.js';
import { workedCells } from './pages/worked.js';
import { readWorked, workedIds } from './worked-files.js';

/**
 * What a reader is owed of every rule, in docs/rules.md and on its screen: what it asks, whom it binds, what it costs, its words, its
 * sources, and a worked case that ran for everything it can say. Each line that is missing says what to do.
 */
const cells = workedCells();
const page = readFileSync(fileURLToPath(new URL('../../docs/rules.md', import.meta.url)), 'utf8');
const renewed =
  'run `npx vitest run --project rules libs/rules -u`, then the same with tests/contract/pages.test.ts, and read what changed';

function missingOf(meta: RuleMeta, worked: Worked, text: string): readonly string[] {
  const { id } = meta;
  const told = worked.cases.filter(({ outcome }) => outcome !== 'none');
  const outcomes = new Set(told.map(({ outcome }) => outcome));
  const lacks: readonly (readonly [boolean, string])[] = [
    [meta.asks === '', `say in meta.asks of ${id} what it asks`],
    [meta.binds === '', `say in meta.binds of ${id} whom it binds`],
    [meta.sources.length === 0, `cite a source in meta.sources of ${id}`],
    [Object.keys(meta.messages).length === 0, `give ${id} words in meta.messages`],
    [worked.costs.length === 0, `give the statements of ${id} an effect; then ${renewed}`],
    [
      !outcomes.has('not-met') && !outcomes.has('cannot-tell'),
      `add a case to ${id}.test.ts where ${id} is not met or cannot tell; then ${renewed}`,
    ],
    [!outcomes.has('met'), `add a case to ${id}.test.ts where ${id} is met; then ${renewed}`],
    ...Object.keys(meta.messages).map(
      (message) =>
        [
          !told.some((each) => each.message === message),
          `add a case to ${id}.test.ts in which ${id} says "${message}", or take the message out; then ${renewed}`,
        ] as const,
    ),
    ...told.map(
      ({ name, message }) =>
        [
          message === null || meta.messages[message] === undefined,
          `the case "${name}" of ${id} says a message that ${id} does not have: ${renewed}`,
        ] as const,
    ),
    [
      !text.includes(`\n### ${id}\n`),
      `docs/rules.md has no part on ${id}: run \`npx vitest run --project rules tests/contract/pages.test.ts -u\``,
    ],
  ];
  return lacks.flatMap(([isMissing, todo]) => (isMissing ? [todo] : []));
}

it.each(rules.map(({ meta }) => [meta.id, meta] as const))('nothing is missing of %s', (id, meta) => {
  expect(workedIds(), `the cases of ${id} are not written down: ${renewed}`).toContain(id);
  expect(missingOf(meta, readWorked(id), page)).toEqual([]);
});

it.each(rules.map(({ meta }) => meta.id))('what %s costs the aircraft of the matrix, its own cases show', (id) => {
  const shown = new Set(
    readWorked(id).costs.map((cost) => (cost.stops === 'capability' ? cost.capability : cost.stops)),
  );
  const met = cells.flatMap(({ results }) => results.filter(({ ruleId }) => ruleId === id));
  const costs = new Set(
    met.flatMap(({ effects }) => effects.map((each) => (each.stops === 'capability' ? each.capability : each.stops))),
  );
  const unshown = [...costs].filter((each) => !shown.has(each));
  expect(unshown, `add a case to ${id}.test.ts that costs these; then ${renewed}`).toEqual([]);
});

it('no cases are left of a rule that is gone', () => {
  const gone = workedIds().filter((id) => !rules.some(({ meta }) => meta.id === id));
  expect(gone, 'take these files out of libs/rules/worked').toEqual([]);
});

describe('each missing piece is named', () => {
  const [{ meta: whole } = { meta: undefined }] = rules;
  if (!whole) throw new Error('There are no rules.');
  const worked = readWorked(whole.id);
  const [word = ''] = Object.keys(whole.messages);
  const without = (outcome: string) => worked.cases.filter((each) => each.outcome !== outcome);

  it.each<[what: string, meta: Partial<RuleMeta>, shown: Partial<Worked>, text: string, named: RegExp]>([
    ['what it asks', { asks: '' }, {}, page, /meta\.asks/],
    ['whom it binds', { binds: '' }, {}, page, /meta\.binds/],
    ['a source', { sources: [] }, {}, page, /meta\.sources/],
    ['words', { messages: {} }, {}, page, /meta\.messages/],
    ['costs', {}, { costs: [] }, page, /an effect/],
    [
      'a case in which it is not',
      {},
      { cases: worked.cases.filter((each) => each.outcome === 'met') },
      page,
      /not met or cannot tell/,
    ],
    ['a case in which it is met', {}, { cases: without('met') }, page, /is met/],
    ['a case of a message', {}, { cases: worked.cases.filter((each) => each.message !== word) }, page, /says "/],
    ['a message of a case', { messages: { other: 'Other.' } }, {}, page, /does not have/],
    ['its part of the page', {}, {}, '', /docs\/rules\.md/],
  ])('%s', (_, meta, shown, text, named) => {
    expect(missingOf({ ...whole, ...meta }, { ...worked, ...shown }, text).join('\n')).toMatch(named);
  });

  it('and of a whole rule none', () => {
    expect(missingOf(whole, worked, page)).toEqual([]);
  });
});
