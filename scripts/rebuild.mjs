// npm run rebuild: works out every aircraft again from its recorded changes and compares with what is stored.
import './lib/node-version.mjs';
import { runCommandOfApi } from './lib/cli.mjs';

await runCommandOfApi('aircraft/rebuild-cli.js');
