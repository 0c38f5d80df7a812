// npm run import -- file...: loads a fleet's files through the same path as the Import screen.
import './lib/node-version.mjs';
import { runCommandOfApi } from './lib/cli.mjs';

await runCommandOfApi('imports/cli.js');
