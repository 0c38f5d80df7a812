import { expect, test } from 'vitest';
import type { Problem } from './problem.js';
import { problemAt, problemBeside } from './use-act.js';

const problem = (field?: string): Problem => ({
  code: 'BAD_INPUT',
  title: 'Too short.',
  wayOut: 'Choose a longer one.',
  field,
  details: {},
});

test('a problem stands at its field, and beside the form only where no field shows it', () => {
  const password = problem('input.password');
  expect(problemAt(password, 'password')).toBe('Too short. Choose a longer one.');
  expect(problemAt(password, 'name')).toBeNull();
  expect(problemBeside(password, ['name', 'password'])).toBeNull();
  expect(problemBeside(password, ['name'])).toBe('Too short. Choose a longer one.');
  expect(problemBeside(problem(), ['name'])).toBe('Too short. Choose a longer one.');
  expect(problemAt(null, 'name')).toBeNull();
  expect(problemBeside(null, [])).toBeNull();
});
