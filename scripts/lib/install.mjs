import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { inRoot } from './paths.mjs';
import { quiet } from './run.mjs';
import { StepError, upToDate } from './steps.mjs';

const readJson = (path) => JSON.parse(readFileSync(path, 'utf8'));

/**
 * Whether every package of the lock file is installed in its version. npm leaves its own list of what it installed in
 * node_modules; packages for other platforms are absent from it and are optional.
 */
function isInstalled() {
  const installed = inRoot('node_modules', '.package-lock.json');
  if (!existsSync(installed)) return false;
  const have = readJson(installed).packages;
  const want = readJson(inRoot('package-lock.json')).packages;
  return Object.entries(want).every(([path, entry]) => {
    if (!path.includes('node_modules/')) return true;
    const found = have[path];
    if (!found) return Boolean(entry.optional || entry.devOptional || entry.peer);
    return found.version === entry.version;
  });
}

/** npm belongs to this Node where possible, so that no other one on the path is picked up. */
function npm() {
  const beside = join(dirname(process.execPath), 'node_modules', 'npm', 'bin', 'npm-cli.js');
  const entry = [process.env.npm_execpath, beside].find((path) => path?.endsWith('npm-cli.js') && existsSync(path));
  return entry ? { file: process.execPath, first: [entry] } : { file: 'npm', first: [] };
}

const reasons = [
  {
    when: /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|ENOTCACHED|ERR_SOCKET|network/i,
    message: 'The package registry cannot be reached.',
    wayOut:
      'connect this machine to the registry once (a proxy or mirror is set with `npm config set registry`), ' +
      'then run the same command again. Later starts need no network.',
  },
  {
    when: /EACCES|EPERM|EROFS/,
    message: 'A file of the checkout or of the npm cache cannot be written by this user.',
    wayOut: 'give the checkout to this user (chown) or run as the user who owns it, then run the same command again.',
  },
  {
    when: /ENOSPC/,
    message: 'The disk is full.',
    wayOut: 'make about 1 GB of room, then run the same command again.',
  },
  {
    when: /EUSAGE|can only install packages when/,
    message: 'package.json and package-lock.json do not agree.',
    wayOut: 'run `npm install`, look at the change to package-lock.json, then run the same command again.',
  },
];

/** Installs exactly what the lock file names, unless it is there already. */
export async function install() {
  if (isInstalled()) return upToDate;
  const { file, first } = npm();
  const { code, output } = await quiet(
    file,
    [
      ...first,
      'ci',
      '--include=dev',
      '--include=optional',
      '--ignore-scripts=false',
      '--prefer-offline',
      '--loglevel=error',
    ],
    { env: { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath } },
  );
  if (code === 0) return undefined;
  const reason = reasons.find(({ when }) => when.test(output)) ?? {
    message: `npm ci ended with code ${code}.`,
    wayOut: 'read the lines above; `npm ci --loglevel=verbose` says more.',
  };
  throw new StepError(reason.message, reason.wayOut, output);
}
