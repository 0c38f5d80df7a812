// npm run rebuild: works out every aircraft again from its recorded changes and compares with what is stored.
import './lib/node-version.mjs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { shown } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  await prepare({ web: false });
  return shown(process.execPath, [inRoot('apps/api/dist/aircraft/rebuild-cli.js'), ...process.argv.slice(2)]);
});
