import { fileURLToPath } from 'node:url';
import { join } from 'node:path';

/** The top of the checkout. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** A path inside the checkout. */
export const inRoot = (...parts) => join(root, ...parts);

/** Where stamps of finished steps are kept; goes away with node_modules, so that a new install builds anew. */
export const cacheDirectory = inRoot('node_modules', '.cache', 'tallywing');

/** Command-line entry of an installed package, run with the same Node as this process. */
export const tool = {
  tsc: inRoot('node_modules', 'typescript', 'bin', 'tsc'),
  vite: inRoot('node_modules', 'vite', 'bin', 'vite.js'),
  vitest: inRoot('node_modules', 'vitest', 'vitest.mjs'),
  prisma: inRoot('node_modules', 'prisma', 'build', 'index.js'),
  prettier: inRoot('node_modules', 'prettier', 'bin', 'prettier.cjs'),
  eslint: inRoot('node_modules', 'eslint', 'bin', 'eslint.js'),
  knip: inRoot('node_modules', 'knip', 'bin', 'knip.js'),
  playwright: inRoot('node_modules', 'playwright-core', 'cli.js'),
};
