import { readFileSync } from 'node:fs';
import { format } from 'node:util';
import { expect as vitestExpect } from 'vitest';

/** What test files register while they are loaded. */
export const collected = {
  file: '',
  tests: new Map(),
  clear() {
    this.tests.clear();
  },
};

const path = [];

function describe(name, body) {
  path.push(name);
  body();
  path.pop();
}
describe.each = (rows) => (name, body) => eachOf(rows, name, (title, values) => describe(title, () => body(...values)));

function it(name, run) {
  const { file, tests } = collected;
  const title = `${file}#${[...path, name].join(' ')}`;
  const id = tests.has(title) ? `${title} (${tests.size})` : title;
  tests.set(id, { id, file, run });
}
it.each = (rows) => (name, run) => eachOf(rows, name, (title, values) => it(title, () => run(...values)));

function eachOf(rows, name, use) {
  for (const row of rows) {
    const values = Array.isArray(row) ? row : [row];
    const wanted = (name.match(/%[a-z]/g) ?? []).length;
    use(format(name, ...values.slice(0, wanted)), values);
  }
}

/** As Vitest's; only the comparison with a file is our own, because theirs wants to know which test is running. */
function expect(value, message) {
  const assertion = vitestExpect(value, message);
  assertion.toMatchFileSnapshot = async (file) => vitestExpect(value, message).toBe(readFileSync(file, 'utf8'));
  return assertion;
}
for (const name of ['objectContaining', 'arrayContaining', 'stringMatching', 'stringContaining', 'any', 'fail'])
  expect[name] = vitestExpect[name];

export const harness = { describe, it, test: it, expect };
