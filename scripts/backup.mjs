// npm run backup [-- directory]: copies the built-in server's data into a new directory, while it serves or is stopped.
import './lib/node-version.mjs';
import { runCommandOfApi } from './lib/cli.mjs';

await runCommandOfApi('database/backup-cli.js');
