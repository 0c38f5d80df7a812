import { buildSchema, parse, validate } from 'graphql';
import { describe, expect, it } from 'vitest';
import { canonical, contentHash } from './canonical.js';
import { instantOf } from './clock.js';
import { connectionOf, readPage } from './connection.js';
import { AppError } from './errors.js';
import { boundedOperation, limits } from './limits.js';
import { AppLog, correlationId, withCorrelation } from './logging.js';
import { enumName, scalars } from './scalars.js';

describe('canonical text', () => {
  it('does not depend on the order of keys, at any depth', () => {
    expect(canonical({ b: [{ d: 1, c: 2 }], a: null })).toBe('{"a":null,"b":[{"c":2,"d":1}]}');
    expect(contentHash({ a: 1, b: { c: 2, d: 3 } })).toBe(contentHash({ b: { d: 3, c: 2 }, a: 1 }));
  });
  it('tells apart what differs', () => {
    for (const [a, b] of [
      [
        [1, 2],
        [2, 1],
      ],
      [{ a: null }, {}],
      ['1', 1],
      [[''], []],
      [{ a: '"' }, { a: '\\"' }],
    ]) {
      expect(contentHash(a)).not.toBe(contentHash(b));
    }
  });
  it('leaves out what is not there, and reads back', () => {
    const value = { z: 1.5, a: ['x', { y: false }], e: '\u2028"\\' };
    expect(JSON.parse(canonical({ ...value, gone: undefined }))).toEqual(value);
  });
});

describe('pages', () => {
  const rows = ['a', 'b', 'c'];
  const of = (first: number, after: string | null) => {
    const page = readPage(first, after, ['text']);
    const start = page.after === null ? 0 : rows.indexOf(page.after[0] ?? '') + 1;
    return connectionOf(
      page,
      rows.slice(start, start + page.first + 1),
      rows.length,
      (row) => [row],
      (row) => row,
    );
  };
  it('go on where they ended', () => {
    const first = of(2, null);
    expect(first.edges.map((edge) => edge.node)).toEqual(['a', 'b']);
    expect(first.pageInfo).toMatchObject({ hasNextPage: true, hasPreviousPage: false });
    const second = of(2, first.pageInfo.endCursor);
    expect(second.edges.map((edge) => edge.node)).toEqual(['c']);
    expect(second.pageInfo).toMatchObject({ hasNextPage: false, hasPreviousPage: true });
  });
  it.each([
    [-1, null],
    [501, null],
    [1, 'x'],
    [1, Buffer.from('[1]').toString('base64url')],
    [1, Buffer.from('{}').toString('base64url')],
  ])('refuse first %s after %s', (first, after) => {
    expect(() => of(first, after)).toThrow(AppError);
  });
  it.each([
    ['number', '12', true],
    ['number', '-3', true],
    ['number', '1e3', false],
    ['number', '12345678901', false],
    ['number', '', false],
    ['instant', '2026-11-28T03:00:00.000Z', true],
    ['instant', 'infinity', true],
    ['instant', 'yesterday', false],
    ['text', '', true],
  ] as const)('know a key that is %s: "%s"', (kind, part, known) => {
    const cursor = Buffer.from(JSON.stringify([part])).toString('base64url');
    const read = () => readPage(1, cursor, [kind]).after;
    if (known) expect(read()).toEqual([part]);
    else expect(read).toThrow(expect.objectContaining({ problem: expect.objectContaining({ field: 'after' }) }));
  });
  it('take the first hundred when nothing is said', () => {
    expect(readPage(null, undefined, ['text'])).toEqual({ first: 100, after: null });
  });
});

describe('limits of an operation', () => {
  const schema = buildSchema('type Query { deep: Deep list: Int } type Deep { deep: Deep leaf: Int }');
  const problems = (query: string): number => validate(schema, parse(query), [boundedOperation]).length;
  const nested = (levels: number): string => `${'{ deep '.repeat(levels)}{ leaf }${' }'.repeat(levels)}`;
  it('count levels', () => {
    expect(problems(nested(limits.depth - 1))).toBe(0);
    expect(problems(nested(limits.depth))).toBe(1);
  });
  it('count fields with fragments as often as they are used', () => {
    const leaves = (count: number): string => 'leaf '.repeat(count);
    expect(problems(`{ deep { ${leaves(limits.fields - 1)} } }`)).toBe(0);
    expect(problems(`{ deep { ${leaves(limits.fields)} } }`)).toBe(1);
    const spread = `{ deep { ...F ...F } } fragment F on Deep { ${leaves(limits.fields / 2)} }`;
    expect(problems(spread)).toBe(1);
  });
  it('count one root field under other names', () => {
    const many = (count: number): string =>
      `{ ${Array.from({ length: count }, (_, index) => `l${index}: list`).join(' ')} }`;
    expect(problems(many(limits.rootAliases))).toBe(0);
    expect(problems(many(limits.rootAliases + 1))).toBe(1);
  });
  it('count other names wherever they are given', () => {
    const many = (count: number): string =>
      `{ deep { ${Array.from({ length: count }, (_, index) => `l${index}: leaf`).join(' ')} } }`;
    expect(problems(many(limits.aliases))).toBe(0);
    expect(problems(many(limits.aliases + 1))).toBe(1);
  });
  it('end for a fragment within itself', () => {
    expect(problems('{ deep { ...F } } fragment F on Deep { deep { ...F } }')).toBe(0);
  });
});

describe('scalars', () => {
  it.each(['2026-02-28T23:59Z', '2024-02-29T00:00Z'])('take the moment %s', (text) => {
    expect(scalars.Instant.parseValue(text)).toBe(text);
  });
  it.each([
    '2026-02-29T00:00Z',
    '2026-13-01T00:00Z',
    '2026-01-01T24:00Z',
    '2026-01-01T00:00:00Z',
    '2026-01-01',
    '',
    5,
    null,
  ])('refuse the moment %s', (value) => {
    expect(() => scalars.Instant.parseValue(value)).toThrow(/2026-03-01T14:30Z/);
  });
  it.each(['2026-00-10', '2026-04-31', '26-01-01', '2026-01-01T00:00Z'])('refuse the day %s', (value) => {
    expect(() => scalars.CivilDate.parseValue(value)).toThrow(/2026-03-01/);
  });
  it.each([
    ['flight-school', 'FLIGHT_SCHOOL'],
    ['91.213(d)', '_91_213_D_'],
    ['mel', 'MEL'],
    ['lnav-vnav', 'LNAV_VNAV'],
  ])('spell %s as %s', (value, name) => {
    expect(enumName(value)).toBe(name);
  });
  it('give instants to the minute', () => {
    expect(instantOf(new Date('2026-03-01T14:30:59.999Z'))).toBe('2026-03-01T14:30Z');
  });
});

describe('log lines', () => {
  it('are one JSON a line with the id of their request, also across waiting', async () => {
    const lines: string[] = [];
    const log = new AppLog(
      (line) => lines.push(line),
      () => new Date(0),
    );
    await withCorrelation('req-1', async () => {
      await Promise.resolve();
      log.event('done', { text: 'two\nlines' });
    });
    log.failure('ref', new Error('broken'));
    expect(lines.every((line) => !line.includes('\n'))).toBe(true);
    expect(lines.map((line) => JSON.parse(line) as object)).toEqual([
      { at: '1970-01-01T00:00:00.000Z', level: 'info', id: 'req-1', message: 'done', text: 'two\nlines' },
      {
        at: '1970-01-01T00:00:00.000Z',
        level: 'error',
        id: 'none',
        message: 'failure',
        reference: 'ref',
        error: expect.stringMatching(/^Error: broken\n\s+at .*common\.test\.ts/) as string,
      },
    ]);
    expect(correlationId()).toBe('none');
  });

  it.each([
    ['duplicate key value (email)=(ada@one.example)', 'Error: duplicate key value (email)=([address])'],
    ['invalid input syntax for type integer: "Ada Brook"', 'Error: invalid input syntax for type integer: [value]'],
    [`no session ${'a1'.repeat(32)}`, 'Error: no session [secret]'],
    ['where:\n  name: "Ada Brook"\nfailed', 'Error: where:'],
    ['connect ECONNREFUSED 127.0.0.1:5432', 'Error: connect ECONNREFUSED 127.0.0.1:5432'],
  ])('say what went wrong, not with whose values: %s', (message, expected) => {
    const lines: string[] = [];
    new AppLog((line) => lines.push(line)).failure('ref', new Error(message));
    const { error } = JSON.parse(lines[0] ?? '{}') as { error: string };
    expect(error.split('\n')[0]).toBe(expected);
    expect(error).toMatch(/\n\s+at /);
    expect(error).not.toContain('Ada');
  });
});
