// npm run import -- file...: loads a fleet's files through the same path as the Import screen.
import './lib/node-version.mjs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { shown } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  await prepare({ web: false });
  // A path is meant from where the command was given, not from the top of the checkout.
  const cwd = process.env.INIT_CWD ?? process.cwd();
  return shown(process.execPath, [inRoot('apps/api/dist/imports/cli.js'), ...process.argv.slice(2)], { cwd });
});
