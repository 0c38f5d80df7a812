import { inRoot } from './paths.mjs';
import { prepare } from './prepare.mjs';
import { shown } from './run.mjs';
import { command } from './steps.mjs';

/**
 * Runs one of the API's own commands with the arguments and the input given, after building what is not up to date.
 * @param {string} entry below apps/api/dist
 */
export function runCommandOfApi(entry) {
  return command(async () => {
    await prepare({ web: false });
    // A path is meant from where the command was given, not from the top of the checkout.
    const cwd = process.env.INIT_CWD ?? process.cwd();
    return shown(process.execPath, ['--enable-source-maps', inRoot('apps/api/dist', entry), ...process.argv.slice(2)], {
      cwd,
    });
  });
}
