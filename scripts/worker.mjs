// npm run worker: does on a process or host of its own what the API otherwise does beside serving. Set WORKER=off there.
import './lib/node-version.mjs';
import { inRoot } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { foreground } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  await prepare({ web: false });
  return foreground([{ file: process.execPath, args: ['--enable-source-maps', inRoot('apps/api/dist/worker.js')] }]);
});
