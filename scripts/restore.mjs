// npm run restore -- directory [--replace]: puts a backup in place and checks it by replaying every aircraft's entries.
import './lib/node-version.mjs';
import { runCommandOfApi } from './lib/cli.mjs';

await runCommandOfApi('database/restore-cli.js');
