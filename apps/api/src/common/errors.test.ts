import { GraphQLError } from 'graphql';
import { describe as group, expect, it } from 'vitest';
import { AppError, describe, formatGraphQLError, statusOf, toProblem } from './errors.js';
import type { Problem } from './errors.js';
import { AppLog } from './logging.js';

const every: readonly Problem[] = [
  { code: 'SIGNED_OUT' },
  { code: 'SIGN_IN_FAILED' },
  { code: 'FORBIDDEN', action: 'people.write' },
  { code: 'NOT_FOUND', what: 'aircraft' },
  { code: 'BAD_INPUT', field: 'first', reason: 'A page holds 0 to 500 rows.', wayOut: 'Ask for fewer.' },
  { code: 'STALE_REVISION', revision: 4, changedBy: 'Somebody', changedAt: '2026-01-01T00:00Z' },
  {
    code: 'STALE_REVISION',
    revision: 2,
    changedBy: 'Somebody',
    changedAt: '2026-01-01T00:00Z',
    currentId: 'nav@2',
    what: 'catalogue entry',
    kept: true,
  },
  {
    code: 'STALE_REVISION',
    what: 'entry of Somebody',
    revision: 4,
    changedBy: 'Somebody',
    changedAt: '2026-01-01T00:00Z',
  },
  { code: 'KEY_REUSED' },
  {
    code: 'REFUSED',
    refusals: [
      { change: 1, code: 'unknown-meter', field: 'meter', message: 'There is no meter x.', wayOut: 'Define it.' },
    ],
  },
  { code: 'TOO_LARGE', limit: '1mb' },
  { code: 'TOO_MANY', retryAfterSeconds: 60 },
  { code: 'UNAVAILABLE', reason: 'The database does not answer.' },
  { code: 'INTERNAL', reference: 'abc' },
];
const lines: string[] = [];
const log = new AppLog((line) => lines.push(line));

group('the vocabulary of errors', () => {
  it.each(every.map((problem) => [problem.code, problem] as const))(
    '%s has words, a way out and a status',
    (code, problem) => {
      const told = describe(problem);
      expect(told.extensions.code).toBe(code);
      expect(told.message).toMatch(/^[A-Z].*[.]$/);
      expect(told.extensions.wayOut).toMatch(/^[A-Z].*[.]$/);
      expect(statusOf(problem)).toBeGreaterThanOrEqual(400);
    },
  );

  it('says what was changed meanwhile: an aircraft record, or what it is called', () => {
    const stale = every.filter((problem) => problem.code === 'STALE_REVISION').map((problem) => describe(problem));
    expect(stale.map(({ message }) => message)).toEqual([
      'The aircraft record was changed by Somebody meanwhile.',
      'The catalogue entry was changed by Somebody meanwhile.',
      'The entry of Somebody was changed by Somebody meanwhile.',
    ]);
    // Only where there is a draft that is kept.
    expect(stale.map(({ extensions }) => /your draft is kept/.test(extensions.wayOut))).toEqual([true, true, false]);
  });

  it('names the change and field of a refusal', () => {
    const [refused] = every.filter((problem) => problem.code === 'REFUSED');
    expect(refused && describe(refused).extensions).toMatchObject({ field: 'input.changes.1.meter' });
  });
});

group('what was thrown', () => {
  it.each([
    [new AppError({ code: 'KEY_REUSED' }), 'KEY_REUSED'],
    [Object.assign(new Error('refused'), { code: 'ECONNREFUSED' }), 'UNAVAILABLE'],
    [Object.assign(new Error('admin shutdown'), { code: '57P01' }), 'UNAVAILABLE'],
    [Object.assign(new Error('lock'), { code: '55P03' }), 'UNAVAILABLE'],
    [Object.assign(new Error('deadlock'), { code: '40P01' }), 'UNAVAILABLE'],
    [Object.assign(new Error('unique'), { code: '23505' }), 'INTERNAL'],
    [Object.assign(new Error('invalid byte sequence for encoding "UTF8": 0x00'), { code: '22021' }), 'BAD_INPUT'],
    [Object.assign(new Error('unsupported Unicode escape sequence'), { code: '22P05' }), 'BAD_INPUT'],
    [Object.assign(new Error('invalid input syntax for type json'), { code: '22P02' }), 'BAD_INPUT'],
    [Object.assign(new Error('invalid input syntax for type integer: "NaN"'), { code: '22P02' }), 'INTERNAL'],
    [new TypeError('x is not a function'), 'INTERNAL'],
    [new Error('timeout exceeded when trying to connect'), 'UNAVAILABLE'],
    [new Error('Connection terminated unexpectedly'), 'UNAVAILABLE'],
    [new Error('Client has encountered a connection error and is not queryable'), 'UNAVAILABLE'],
    ['text', 'INTERNAL'],
  ])('%s becomes %s', (error, code) => {
    expect(toProblem(error, 'ref', log).code).toBe(code);
  });

  it('is logged whole and told as a reference only, when nobody foresaw it', () => {
    lines.length = 0;
    const error = new GraphQLError('secret detail', { originalError: new Error('secret detail in table members') });
    const told = formatGraphQLError(error.toJSON(), error, 'ref-7', log);
    expect(JSON.stringify(told)).not.toContain('secret');
    expect(told.extensions).toMatchObject({ code: 'INTERNAL', reference: 'ref-7' });
    expect(lines.join()).toContain('secret detail in table members');
  });
});

group('requests that never ran', () => {
  const format = (message: string, code: string) => {
    const error = new GraphQLError(message, { extensions: { code } });
    return formatGraphQLError(error.toJSON(), error, 'ref', log);
  };
  it('name the field as callers write it, without the value', () => {
    const message =
      'Variable "$input" got invalid value { a: 1, b: "x; y" } at "input.changes[2].hours"; Int cannot represent non-integer value: 1.5';
    expect(format(message, 'BAD_USER_INPUT')).toMatchObject({
      message: 'Int cannot represent non-integer value: 1.5',
      extensions: { code: 'BAD_INPUT', field: 'input.changes.2.hours' },
    });
  });
  it('fall back to the query', () => {
    expect(format('Syntax Error: Unexpected }.', 'GRAPHQL_PARSE_FAILED').extensions).toMatchObject({
      code: 'BAD_INPUT',
      field: 'query',
    });
  });
});
