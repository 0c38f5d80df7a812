// npm run clients: many people on one aircraft at once; one winner for each revision. See tests/load/clients.mjs for its options.
import './lib/node-version.mjs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { shown } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  await prepare({ web: false });
  return shown(process.execPath, [inRoot('tests/load/clients.mjs'), ...process.argv.slice(2)]);
});
