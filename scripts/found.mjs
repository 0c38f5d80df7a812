// npm run found < founding.json: founds an organisation with its first people, on a database without the demo.
import './lib/node-version.mjs';
import { runCommandOfApi } from './lib/cli.mjs';

await runCommandOfApi('house/found-cli.js');
