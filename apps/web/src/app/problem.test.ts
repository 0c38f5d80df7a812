import { CombinedGraphQLErrors, ServerError } from '@apollo/client/errors';
import { expect, test } from 'vitest';
import { problemOf, problemOfPlainAnswer } from './problem.js';

function graphqlError(message: string, extensions: Record<string, unknown>): CombinedGraphQLErrors {
  return new CombinedGraphQLErrors({ errors: [{ message, extensions }] });
}

test('the API names the field and the way out, and the rest is kept', () => {
  const problem = problemOf(
    graphqlError('The hours run backwards.', {
      code: 'BAD_INPUT',
      field: 'input.changes.0.meterRead.value',
      wayOut: 'Read the meter again.',
      limit: 120,
    }),
  );
  expect(problem).toEqual({
    code: 'BAD_INPUT',
    title: 'The hours run backwards.',
    wayOut: 'Read the meter again.',
    field: 'input.changes.0.meterRead.value',
    details: { limit: 120 },
  });
});

test('a code outside the vocabulary is treated as a failure of the server', () => {
  expect(problemOf(graphqlError('odd', { code: 'SOMETHING_NEW' })).code).toBe('INTERNAL');
  expect(problemOf(graphqlError('odd', {})).code).toBe('INTERNAL');
});

test('a signed-out answer says what to do even if the server does not', () => {
  const problem = problemOf(graphqlError('', { code: 'SIGNED_OUT' }));
  expect(problem.title).toBe('You are signed out.');
  expect(problem.wayOut).toMatch(/Sign in again/);
});

test('no answer at all is told apart from a wrong one', () => {
  expect(problemOf(new TypeError('Failed to fetch')).code).toBe('OFFLINE');
  expect(problemOf(new Error('x')).code).toBe('INTERNAL');
  const answer = (status: number) => new ServerError('no', { response: new Response('', { status }), bodyText: '' });
  expect(problemOf(answer(401)).code).toBe('SIGNED_OUT');
  expect(problemOf(answer(413)).code).toBe('TOO_LARGE');
  expect(problemOf(answer(503)).code).toBe('UNAVAILABLE');
});

test('a plain route answers in the same form; anything else is a failure of the server', () => {
  const told = { errors: [{ message: 'Too large.', extensions: { code: 'TOO_LARGE', wayOut: 'Send less.' } }] };
  expect(problemOfPlainAnswer(told)).toMatchObject({ code: 'TOO_LARGE', title: 'Too large.', wayOut: 'Send less.' });
  expect(problemOfPlainAnswer(null).code).toBe('INTERNAL');
  expect(problemOfPlainAnswer({ errors: [] }).code).toBe('INTERNAL');
});
