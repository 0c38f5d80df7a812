import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { planAll } from './testing.js';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const made = mkdtempSync(join(tmpdir(), 'tallywing-samples-'));
afterAll(() => {
  rmSync(made, { recursive: true });
});

function make(into: string, ...options: string[]): string {
  const folder = join(made, into);
  execFileSync(process.execPath, [join(samples, 'make.mjs'), '--into', folder, ...options]);
  return folder;
}

it('the samples are what their maker makes', () => {
  const folder = make('same');
  for (const part of ['clean', 'messy']) {
    const names = readdirSync(join(samples, part));
    expect(readdirSync(join(folder, part))).toEqual(names);
    for (const name of names)
      expect(
        readFileSync(join(folder, part, name), 'utf8'),
        `${part}/${name}: run node apps/api/samples/make.mjs`,
      ).toBe(readFileSync(join(samples, part, name), 'utf8'));
  }
});

it.each(['2027-03-31', '2028-02-29'])('made for %s, the clean one is as clean and the messy one as messy', (today) => {
  const folder = make(today, '--date', today);
  const plan = (part: string) =>
    planAll(
      readdirSync(join(folder, part))
        .filter((name) => name.endsWith('.csv'))
        .map((name) => ({ name, bytes: readFileSync(join(folder, part, name)) })),
      {
        now: `${today}T14:00Z`,
        aircraft: new Map(),
        aircraftIds: new Set(),
        operators: [],
        bases: [],
        types: [],
        supersededTypes: new Set(),
      },
    );
  expect(plan('clean').bad).toEqual([]);
  const expected = JSON.parse(readFileSync(join(folder, 'messy/expected.json'), 'utf8')) as {
    file: string;
    line: number;
  }[];
  expect(
    plan('messy')
      .bad.map(({ file, line }) => `${file}:${line}`)
      .sort(),
  ).toEqual(expected.map(({ file, line }) => `${file}:${line}`).sort());
});
