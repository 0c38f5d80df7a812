// npm run dev: compiles on every change, restarts the API, and serves the web application with its proxy to the API.
import './lib/node-version.mjs';
import { inRoot, tool } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { foreground } from './lib/run.mjs';
import { command } from './lib/steps.mjs';

await command(async () => {
  await prepare({ web: false });
  const port = process.env.PORT ?? '4300';
  return foreground([
    { file: process.execPath, args: [tool.tsc, '-b', '-w', '--preserveWatchOutput', 'libs/rules', 'apps/api'] },
    {
      file: process.execPath,
      args: [
        '--watch-path=apps/api/dist',
        '--watch-path=libs/rules/dist',
        '--watch-preserve-output',
        '--enable-source-maps',
        inRoot('apps/api/dist/main.js'),
      ],
    },
    {
      file: process.execPath,
      args: [tool.vite],
      cwd: inRoot('apps/web'),
      env: { API_ORIGIN: process.env.API_ORIGIN ?? `http://127.0.0.1:${port}` },
    },
  ]);
});
