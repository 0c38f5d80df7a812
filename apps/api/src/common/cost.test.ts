import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildSchema, Kind, parse } from 'graphql';
import { describe, expect, it } from 'vitest';
import { costOf, fragmentsOf } from './cost.js';
import { limits } from './limits.js';

const schema = buildSchema(sourcesOf(new URL('..', import.meta.url), /\.graphql$/).join('\n'));

function cost(query: string, variables: Readonly<Record<string, unknown>> = {}): number {
  const document = parse(query);
  const [operation] = document.definitions.filter((each) => each.kind === Kind.OPERATION_DEFINITION);
  const type = operation && schema.getRootType(operation.operation);
  if (!operation || !type) throw new Error('no operation');
  return costOf(operation.selectionSet, type, { schema, fragments: fragmentsOf(document), variables });
}

describe('the cost of an operation', () => {
  it('counts a field once for each row of its page', () => {
    const page = (first: string) => `{ findings${first} { edges { node { id key } } } }`;
    // The list itself, then for each row: edges, node and its two fields.
    expect(cost(page('(first: 10)'))).toBe(1 + 10 * 4);
    expect(cost(page(''))).toBe(1 + limits.usualPage * 4);
    expect(cost(`query ($n: Int) ${page('(first: $n)')}`, { n: 3 })).toBe(1 + 3 * 4);
    expect(cost(page('(first: 900)'))).toBe(1 + limits.page * 4);
  });

  it('counts what fragments hold, and lists without a page as a few', () => {
    const fragments = 'fragment P on Person { id ...N } fragment N on Person { name }';
    expect(cost(`{ people { ...P } } ${fragments}`)).toBe(1 + 5 * 2);
    expect(cost('{ people { ... on Person { id } } }')).toBe(1 + 5);
  });

  it('weighs what searches or judges', () => {
    const one = (alias: string) => `${alias}: wayBack(profile: "x") { complete }`;
    expect(cost(`{ aircraft(id: "a") { ${one('a')} ${one('b')} } }`)).toBeGreaterThan(8000);
  });

  const text = sourcesOf(new URL('../../../web/src', import.meta.url), /\.tsx?$/)
    .flatMap((source) => [...source.matchAll(/graphql\(\s*`([^`]*)`/g)].map((found) => found[1]))
    .join('\n');
  const operations = parse(text).definitions.filter((each) => each.kind === Kind.OPERATION_DEFINITION);

  it.each(operations.map((each) => [each.name?.value ?? '', each] as const))(
    'leaves the screen of %s room to grow',
    (_, { operation, selectionSet }) => {
      const type = schema.getRootType(operation);
      if (!type) throw new Error('no such type');
      const asked = { schema, fragments: fragmentsOf(parse(text)), variables: { first: limits.page } };
      expect(costOf(selectionSet, type, asked)).toBeLessThan(limits.cost / 4);
    },
  );
});

function sourcesOf(home: URL, names: RegExp): string[] {
  const directory = fileURLToPath(home);
  return readdirSync(directory, { recursive: true, encoding: 'utf8' })
    .filter((file) => names.test(file))
    .map((file) => readFileSync(`${directory}/${file}`, 'utf8'));
}
