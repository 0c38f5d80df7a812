// npm start: from a clean clone to a running application, with nothing but Node.
import './lib/node-version.mjs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { foreground } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  console.log('Tallywing: getting ready');
  await prepare();
  return foreground([{ file: process.execPath, args: ['--enable-source-maps', inRoot('apps/api/dist/main.js')] }]);
});
