// npm run mutate -- [folder or file of libs/rules/src ...]: changes the rule library in small ways, one at a time, and asks whether a
// test about it notices. It takes minutes, so it is no part of npm test: give it the folder that you work on. Survivors are printed at
// the end, and written down in docs/mutation.md for folders that were tried whole. SAMPLE=20 tries a drawn 20 % of the changes.
import './lib/node-version.mjs';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { inRoot } from './lib/paths.mjs';
import { command, StepError } from './lib/steps.mjs';
import { record } from './mutate/record.mjs';
import { Stryker } from '@stryker-mutator/core';

const home = 'libs/rules/src';
/** Tables of facts are held to their sources by tests/reference; schemas and lists of names have no behaviour to change. */
const report = '.test-data/mutation.json';
const left = ['facts/**', 'catalogue/**', 'dossier/**', 'time/zone-data.ts', 'assess/version.ts', 'rules/registry.ts'];

await command(async () => {
  const wanted = process.argv.slice(2);
  const mutations = new Stryker({
    mutate: [
      ...(wanted.length === 0 ? [home] : wanted).map(patternOf),
      `!${home}/**/*.test.ts`,
      `!${home}/index.ts`,
      ...left.map((each) => `!${home}/${each}`),
    ],
    testRunner: 'one-process',
    plugins: [inRoot('scripts/mutate/runner.mjs')],
    concurrency: Number(process.env.CONCURRENCY ?? 1),
    reporters: ['clear-text', 'progress-append-only', 'json'],
    clearTextReporter: { logTests: false, reportTests: false, skipFull: true },
    jsonReporter: { fileName: report },
    tempDirName: '.test-data/mutate',
    ignorePatterns: ['.data', '.test-data', 'docs/screens', 'dist'],
    // What runs once when a module is loaded would need every test for every mutant.
    ignoreStatic: true,
    timeoutMS: 15_000,
  });
  try {
    await mutations.runMutationTest();
  } catch (error) {
    const wayOut = 'mend what it names above; the tests must pass before a change is tried on them.';
    throw new StepError('The changes could not be tried.', wayOut, String(error));
  }
  const { places, stale } = record(JSON.parse(readFileSync(inRoot(report), 'utf8')), {
    wanted: (wanted.length === 0 ? [home] : wanted).map((place) => place.replace(/\/$/, '')),
    isMutated,
    day: new Date().toISOString().slice(0, 10),
    percent: Number(process.env.SAMPLE ?? 100),
  });
  console.log(`Written to docs/mutation.md: ${places.join(', ') || 'nothing, because no folder was tried whole'}.`);
  if (stale.length === 0) return;
  throw new StepError(
    'Some reasons of scripts/mutate/reasons explain nothing: their code is gone or changed, or a test notices the change by now.',
    'take them out, or write them anew for the code as it is.',
    stale
      .map(({ file, code, replacement }) => `${file}: ${code}${replacement === undefined ? '' : ` to ${replacement}`}`)
      .join('\n'),
  );
});

/** Whether a file of the library is one that gets changed. */
function isMutated(file) {
  const inside = file.slice(home.length + 1);
  return (
    file.endsWith('.ts') &&
    !file.endsWith('.test.ts') &&
    inside !== 'index.ts' &&
    !left.some((each) => inside === each || (each.endsWith('/**') && inside.startsWith(each.slice(0, -2))))
  );
}

function patternOf(place) {
  const path = place.replace(/\/$/, '');
  if (!path.startsWith(home) || !existsSync(inRoot(path)))
    throw new StepError(`${place} is no folder or file of ${home}.`, `name one, such as ${home}/calculations.`);
  if (left.some((each) => path.startsWith(`${home}/${each.replace('/**', '')}`)))
    throw new StepError(
      `${place} is left as it is: tables, schemas and lists have no behaviour to change.`,
      'name another.',
    );
  return statSync(inRoot(path)).isDirectory() ? `${path}/**/*.ts` : path;
}
