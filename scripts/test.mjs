// npm test: everything, from a clean clone. `npm test -- rules api` runs those parts alone.
// The last line is the count over all runs.
import './lib/node-version.mjs';
import { findBrowser } from './lib/browser.mjs';
import { prepare } from './lib/prepare.mjs';
import { command, seconds, step, StepError } from './lib/steps.mjs';
import { runTests } from './lib/test-runs.mjs';

// The rule library takes zones as arguments, and the linter keeps everything out of it that knows the machine's own
// (scripts/lint/clock-free.mjs). So all of it runs in one zone, and what has to do with days, hours and whole fleets in two more,
// west and east of the date line, with and without a change of clocks: there the outcome would differ.
const elsewhere = ['Pacific/Honolulu', 'Pacific/Auckland'];
const ofTime = ['libs/rules/src/time/', 'libs/rules/src/horizon/', 'tests/reference/', 'tests/properties/fleet'];

/** @type {(import('./lib/test-runs.mjs').TestRun & { part: string, filters?: string[] })[]} */
const runs = [
  { part: 'rules', label: 'rules', projects: ['rules'], env: { TZ: 'UTC' } },
  ...elsewhere.map((TZ) => ({
    part: 'rules',
    label: `rules of time in ${TZ}`,
    projects: ['rules'],
    env: { TZ },
    filters: ofTime,
  })),
  { part: 'web', label: 'web application', projects: ['web'] },
  { part: 'shell', label: 'parts of the API', projects: ['shell'] },
  { part: 'api', label: 'API on a real database', projects: ['api'] },
  { part: 'browser', label: 'screens in a browser', projects: ['browser'] },
];

const parts = [...new Set(runs.map(({ part }) => part))];

let passed = 0;
let failed = 0;

await command(async () => {
  const wanted = process.argv.slice(2);
  const unknown = wanted.find((part) => !parts.includes(part));
  if (unknown)
    throw new StepError(
      `There is no part of the tests called ${unknown}.`,
      `name some of ${parts.join(', ')}, or none.`,
    );
  const chosen = runs.filter(({ part }) => wanted.length === 0 || wanted.includes(part));

  console.log('Tallywing: getting ready');
  await prepare();
  if (chosen.some(({ part }) => part === 'browser'))
    await step('browser', async () => {
      process.env.CHROMIUM = await findBrowser();
      return process.env.CHROMIUM;
    });

  const summary = [];
  for (const run of chosen) {
    console.log(`\n== ${run.label}`);
    const from = Date.now();
    const result = await runTests(run, run.filters);
    passed += result.passed;
    failed += result.failed;
    for (const problem of result.problems) console.log(`  ${run.label}: ${problem}`);
    summary.push(
      `  ${run.label.padEnd(34)} ${seconds(Date.now() - from).padStart(8)}  ${result.passed} passed, ${result.failed} failed`,
    );
  }
  console.log(`\n${summary.join('\n')}\n`);
  return failed === 0 && passed > 0 ? 0 : 1;
});

// A set-up that did not come as far as a test is a failure, and is counted as one.
if (process.exitCode !== 0 && failed === 0) failed = 1;
console.log(`${passed} passed, ${failed} failed`);
