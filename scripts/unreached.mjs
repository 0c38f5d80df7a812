// npm run unreached [-- tests/api/some.test.ts]: runs the tests of the API and prints every function and branch of apps/api/src
// that ran in no process of theirs. Processes that tests kill as a power cut would leave no account. No part of npm test: what it
// prints wants a test, or a reason (a unit test of the shell project, a case that only another machine has).
import './lib/node-version.mjs';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { SourceMap } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepare } from './lib/prepare.mjs';
import { command } from './lib/steps.mjs';
import { runTests } from './lib/test-runs.mjs';
import { ran, unreached } from './lib/unreached.mjs';

const ours = /\/apps\/api\/dist\/(?!.*(prisma-client|\.generated\.|\.module\.js)).*\.js$/;

await command(async () => {
  await prepare({ web: false });
  const folder = mkdtempSync(join(tmpdir(), 'tallywing-unreached-'));
  try {
    const run = { label: 'API', projects: ['api'], env: { NODE_V8_COVERAGE: folder } };
    const { failed } = await runTests(run, process.argv.slice(2));
    for (const [file, { text, map }] of [...accountsIn(folder)].sort(([a], [b]) => a.localeCompare(b)))
      tell(file, unreached(text, map));
    return failed === 0 ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

/** What ran of each script, over all processes. */
function accountsIn(folder) {
  const accounts = new Map();
  for (const name of readdirSync(folder)) {
    const { result } = JSON.parse(readFileSync(join(folder, name), 'utf8'));
    for (const { url, functions } of result.filter((each) => ours.test(each.url))) {
      const file = fileURLToPath(url);
      const known = accounts.get(file) ?? { text: readFileSync(file, 'utf8'), map: null };
      const here = ran(known.text.length, functions);
      known.map = known.map === null ? here : known.map.map((each, at) => each | here[at]);
      accounts.set(file, known);
    }
  }
  return accounts;
}

function tell(file, pieces) {
  const map = new SourceMap(JSON.parse(readFileSync(`${file}.map`, 'utf8')));
  const text = readFileSync(file, 'utf8');
  for (const { at, piece } of pieces) {
    const before = text.slice(0, at).split('\n');
    const { originalLine } = map.findEntry(before.length - 1, before.at(-1).length);
    const source = file.replace(/.*\/apps\/api\/dist\//, 'apps/api/src/').replace(/js$/, 'ts');
    console.log(`${source}:${(originalLine ?? 0) + 1}  ${piece.slice(0, 160)}`);
  }
}
