// npm run kills: kills API, worker and PostgreSQL at random under load; nothing acknowledged is lost. See tests/faults/kills.mjs for its options.
import './lib/node-version.mjs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { shown } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  await prepare({ web: false });
  return shown(process.execPath, [inRoot('tests/faults/kills.mjs'), ...process.argv.slice(2)]);
});
