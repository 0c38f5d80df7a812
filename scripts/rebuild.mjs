// npm run rebuild: works out every aircraft again from its recorded changes and compares with what is stored; it writes nothing.
// npm run rebuild -- --write: judges anew where the read tables are not what the record gives.
import './lib/node-version.mjs';
import { runCommandOfApi } from './lib/cli.mjs';

await runCommandOfApi('aircraft/rebuild-cli.js');
