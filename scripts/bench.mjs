// npm run bench: every measurement of tests/load in the order of their names; ends with a failure if one fails.
import './lib/node-version.mjs';
import { readdirSync } from 'node:fs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { shown } from './lib/run.mjs';
import { command, StepError } from './lib/steps.mjs';

await command(async () => {
  const wanted = process.argv.slice(2);
  const found = readdirSync(inRoot('tests/load'))
    .filter(
      (name) => name.endsWith('.bench.mjs') && (wanted.length === 0 || wanted.some((part) => name.includes(part))),
    )
    .sort();
  if (found.length === 0)
    throw new StepError(
      `No measurement in tests/load is named like ${wanted.join(', ') || '*.bench.mjs'}.`,
      'name one that is there, or none to run them all.',
    );
  await prepare();
  let failed = 0;
  for (const name of found) {
    console.log(`\n== ${name}`);
    if ((await shown(process.execPath, [inRoot('tests/load', name)])) !== 0) failed += 1;
  }
  return failed === 0 ? 0 : 1;
});
