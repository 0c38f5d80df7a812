// npm run check: everything that can be said about the code without running it. All steps run; the end says what failed.
import './lib/node-version.mjs';
import { existsSync, readdirSync } from 'node:fs';
import { inRoot, tool } from './lib/paths.mjs';
import { prepare } from './lib/prepare.mjs';
import { quiet } from './lib/run.mjs';
import { command, explain, step, StepError } from './lib/steps.mjs';

async function mustPass(args, message, wayOut) {
  const { code, output } = await quiet(process.execPath, args);
  if (code !== 0) throw new StepError(message, wayOut, output);
}

const isBoundary = (ruleId) => /^tallywing\/|^no-restricted-/.test(ruleId ?? '');

/** One run of the linter serves two steps, because it is the slowest part. */
let findings;
async function lint() {
  const { output } = await quiet(process.execPath, [tool.eslint, '--format', 'json', '--max-warnings', '0', '.']);
  try {
    findings = JSON.parse(output).flatMap(({ filePath, messages }) =>
      messages.map((one) => ({ ...one, place: `${filePath}:${one.line ?? 1}:${one.column ?? 1}` })),
    );
  } catch {
    throw new StepError('The linter did not run.', 'correct what it names above.', output);
  }
}

function report(wanted, message, wayOut) {
  if (findings === undefined) throw new StepError(message, 'the linter did not run: see the step before.');
  const lines = findings.filter(wanted).map(({ place, message: text, ruleId }) => `${place}\n    ${text} (${ruleId})`);
  if (lines.length > 0) throw new StepError(message, wayOut, lines.join('\n'));
}

const drifts = existsSync(inRoot('scripts/drift'))
  ? readdirSync(inRoot('scripts/drift'))
      .filter((name) => name.endsWith('.mjs'))
      .sort()
  : [];

/** @type {[string, () => Promise<unknown>][]} */
const steps = [
  [
    'format',
    () =>
      mustPass(
        [tool.prettier, '--check', '--log-level', 'warn', '.'],
        'Some files are not formatted.',
        'run `npm run format`.',
      ),
  ],
  [
    'lint',
    async () => {
      await lint();
      report(({ ruleId }) => !isBoundary(ruleId), 'The linter found something.', 'correct the places named above.');
    },
  ],
  [
    'boundaries',
    async () =>
      report(({ ruleId }) => isBoundary(ruleId), 'An import or a name crosses a boundary.', 'do what each line says.'),
  ],
  [
    'types',
    () => mustPass([tool.tsc, '-b', '--pretty', 'false'], 'Types do not fit.', 'correct the places named above.'),
  ],
  [
    'dead code',
    () =>
      mustPass(
        [tool.knip, '--no-progress'],
        'Something is used by nothing.',
        'take it out, or use it; a new way into the code is named in knip.json.',
      ),
  ],
  ...drifts.map((name) => [
    `drift: ${name.replace(/\.mjs$/, '')}`,
    () =>
      mustPass([inRoot('scripts/drift', name)], `scripts/drift/${name} found a difference.`, 'do what it says above.'),
  ]),
];

await command(async () => {
  await prepare({ web: false });
  const failures = [];
  for (const [name, work] of steps) {
    try {
      await step(name, work);
    } catch (error) {
      failures.push([name, error]);
    }
  }
  for (const [name, error] of failures) {
    console.error(`\n== ${name}`);
    explain(error);
  }
  console.log(
    failures.length === 0 ? '\nAll checks passed.' : `\nFailed: ${failures.map(([name]) => name).join(', ')}`,
  );
  return failures.length === 0 ? 0 : 1;
});
