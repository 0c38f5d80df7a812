import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../lib/paths.mjs';
import { home } from './about.mjs';
import { reasonFor, singles, staleReasons } from './reasons.mjs';

const mutant = {
  file: `${home}time/zones.ts`,
  mutatorName: 'x',
  code: 'a  < b',
  replacement: 'a <= b',
  line: '  if (a  < b) c();',
};
const single = { file: 'time/zones.ts', code: 'a < b', reason: 'never equal' };

describe('reasonFor a single change', () => {
  it.each([
    ['by file and code', single, 'never equal'],
    ['by what it was changed to', { ...single, replacement: 'a <= b' }, 'never equal'],
    ['by text of its line', { ...single, line: 'c();' }, 'never equal'],
    ['not in another file', { ...single, file: 'time/days.ts' }, null],
    ['not for a part of the code', { ...single, code: 'a <' }, null],
    ['not for another replacement', { ...single, replacement: 'true' }, null],
    ['not in another line', { ...single, line: 'd();' }, null],
  ])('%s', (_name, one, reason) => {
    expect(reasonFor(mutant, [one])).toBe(reason);
  });
});

describe('staleReasons', () => {
  const stale = (survivors, files, file = 'time/zones.ts') =>
    staleReasons(survivors, files, [{ ...single, file }]).length;

  it('are those of a tried file that explain no survivor, and those of a file that is gone', () => {
    expect(stale([mutant], [mutant.file])).toBe(0);
    expect(stale([], [mutant.file])).toBe(1);
    expect(stale([], [`${home}time/moment.ts`])).toBe(0);
    expect(stale([], [], 'time/no-such-file.ts')).toBe(1);
  });
});

describe('the single reasons', () => {
  it('speak of code that is there', () => {
    const gone = singles.filter(({ file, code }) => !textOf(file).includes(oneLine(code.replace(/ …$/, ''))));
    expect(gone).toEqual([]);
  });

  it('say why in words', () => {
    expect(singles.filter(({ reason }) => !/^\w+( \S+){3,}$/.test(reason))).toEqual([]);
  });
});

function textOf(file) {
  return existsSync(inRoot(home + file)) ? oneLine(readFileSync(inRoot(home + file), 'utf8')) : '';
}

function oneLine(text) {
  return text.replaceAll(/\s+/g, ' ').trim();
}
