// npm run generate: makes every generated file anew, whether or not its inputs have changed.
import './lib/node-version.mjs';
import { install } from './lib/install.mjs';
import { oneAtATime } from './lib/lock.mjs';
import { buildRules, generateClient, runGenerators } from './lib/prepare.mjs';
import { removeStamp } from './lib/stamps.mjs';
import { command, step } from './lib/steps.mjs';

await command(() =>
  oneAtATime(async () => {
    await step('packages', install);
    removeStamp('database-client');
    await step('database client', generateClient);
    await step('rule library', buildRules);
    await step('generated schema and types', runGenerators);
  }),
);
