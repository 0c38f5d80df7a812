import { existsSync, readdirSync, rmSync } from 'node:fs';
import { install } from './install.mjs';
import { oneAtATime } from './lock.mjs';
import { inRoot, tool } from './paths.mjs';
import { quiet } from './run.mjs';
import { filesBelow, hashOf, readStamp, removeStamp, versionOf, writeStamp } from './stamps.mjs';
import { step, StepError, upToDate } from './steps.mjs';

const isTest = (file) => /\.test\.tsx?$/.test(file);
const sources = (...paths) => filesBelow(paths, (file) => !isTest(file));

/** Removes what the compiler made of sources that are gone: it never does so itself, and a stale file still loads. */
function removeOrphans(before, now) {
  const kept = new Set(now);
  for (const file of before)
    if (!kept.has(file) && /\/src\/.*\.tsx?$/.test(file))
      for (const ending of ['.js', '.js.map', '.d.ts', '.d.ts.map'])
        rmSync(inRoot(file.replace('/src/', '/dist/').replace(/\.tsx?$/, ending)), { force: true });
}

/**
 * Runs `work` unless its inputs are those of the last time and its output is still there.
 * @param {string} name of the stamp
 * @param {string[]} inputs paths relative to the checkout
 * @param {{ output: string, words?: string[] }} result a path that must exist, and further words to compare
 */
async function whenChanged(name, inputs, { output, words = [] }, work) {
  const hash = hashOf(inputs, ...words);
  const last = readStamp(name);
  if (last?.hash === hash && existsSync(inRoot(output))) return upToDate;
  removeStamp(name);
  removeOrphans(last?.inputs ?? [], inputs);
  await work();
  writeStamp(name, { hash, inputs });
  return undefined;
}

async function mustSucceed(args, options, message, wayOut) {
  const { code, output } = await quiet(process.execPath, args, options);
  if (code !== 0) throw new StepError(message, wayOut, output);
}

const compile = (project) =>
  mustSucceed(
    [tool.tsc, '-b', project],
    {},
    `${project} does not compile.`,
    'correct the places named above, then run the same command again.',
  );

const common = ['tsconfig.base.json', 'package-lock.json'];

const rulesInputs = () => [
  ...sources('libs/rules/src', 'libs/rules/package.json', 'libs/rules/tsconfig.json'),
  ...common,
];

export const buildRules = () =>
  whenChanged('rules', rulesInputs(), { output: 'libs/rules/dist/index.js', words: [versionOf('typescript')] }, () =>
    compile('libs/rules'),
  );

/**
 * The database client is generated from the schema. The generator runs in this process alone, but the tool insists on
 * an engine file that it would otherwise download and that only its own migration commands use: any file satisfies it.
 */
export const generateClient = () =>
  whenChanged(
    'database-client',
    filesBelow(['prisma/schema.prisma']),
    { output: 'apps/api/src/database/prisma-client/client.ts', words: [versionOf('prisma')] },
    () =>
      mustSucceed(
        [tool.prisma, 'generate', '--schema', 'prisma/schema.prisma'],
        {
          env: {
            PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
            PRISMA_HIDE_UPDATE_MESSAGE: '1',
            CHECKPOINT_DISABLE: '1',
          },
        },
        'The database client cannot be generated.',
        'correct prisma/schema.prisma at the place named above, then run the same command again.',
      ),
  );

const generators = () =>
  existsSync(inRoot('scripts/generate'))
    ? readdirSync(inRoot('scripts/generate'))
        .filter((name) => name.endsWith('.mjs'))
        .sort()
    : [];

const generatorInputs = () => [
  ...rulesInputs(),
  ...filesBelow(['scripts/generate', 'prisma/schema.prisma']),
  ...filesBelow(['apps/api/src'], (file) => file.endsWith('.graphql')),
];

/** Runs `scripts/generate/*.mjs` in the order of their names. They may read the built rule library. */
export async function runGenerators() {
  for (const name of generators())
    await mustSucceed(
      [inRoot('scripts', 'generate', name)],
      {},
      `scripts/generate/${name} failed.`,
      'correct what it names above, then run the same command again.',
    );
}

/** As `runGenerators`, but only when something that they read has changed. Some of it they write, so stamp it after. */
async function generateWhenChanged() {
  const isThere = existsSync(inRoot('apps/web/src/graphql-schema.d.ts'));
  if (isThere && readStamp('generated')?.hash === hashOf(generatorInputs())) return upToDate;
  await runGenerators();
  writeStamp('generated', { hash: hashOf(generatorInputs()) });
  return `${generators().length} generators`;
}

const buildApi = () =>
  whenChanged(
    'api',
    [...sources('apps/api/src', 'apps/api/package.json', 'apps/api/tsconfig.json'), ...rulesInputs()],
    { output: 'apps/api/dist/main.js', words: [versionOf('typescript')] },
    () => compile('apps/api'),
  );

const buildWeb = () =>
  whenChanged(
    'web',
    [...sources('apps/web'), ...rulesInputs()],
    { output: 'apps/web/dist/index.html', words: [versionOf('vite')] },
    () =>
      mustSucceed(
        [tool.vite, 'build', '--logLevel', 'warn'],
        { cwd: inRoot('apps', 'web'), env: { NODE_ENV: 'production' } },
        'The web application does not build.',
        'correct the places named above, then run the same command again.',
      ),
  );

/** Install, generate and build whatever is not up to date, with a line for each step. */
export async function prepare({ web = true } = {}) {
  await oneAtATime(async () => {
    await step('packages', install);
    await step('database client', generateClient);
    await step('rule library', buildRules);
    await step('generated schema and types', generateWhenChanged);
    await step('API', buildApi);
    if (web) await step('web application', buildWeb);
  });
}
