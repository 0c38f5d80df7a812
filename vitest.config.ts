import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The rule library is tested from its source, so that a test never waits for a build or sees an old one. */
const alias = { '@tallywing/rules': at('./libs/rules/src/index.ts') };

/**
 * A project that drives the built application, with time for a real start and a real database. Two files at once: they wait
 * for processes and clocks more than they reckon, and the set-up gives each a server and data of its own.
 */
function built(name: 'api' | 'browser', include: string[], testTimeout: number) {
  const setup = at(`./tests/${name}/setup.ts`);
  return {
    resolve: { alias },
    test: {
      name,
      include,
      ...(existsSync(setup) ? { globalSetup: [setup] } : {}),
      maxWorkers: 2,
      sequence: { groupOrder: name === 'api' ? 1 : 2 },
      testTimeout,
      hookTimeout: 180_000,
      teardownTimeout: 60_000,
    },
  };
}

export default defineConfig({
  test: {
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'rules',
          // Pure functions share nothing that a file could spoil for the next: loaded once, not once a file.
          isolate: false,
          include: ['libs/rules/**/*.test.ts', 'tests/{reference,properties,contract}/**/*.test.ts'],
          testTimeout: 60_000,
        },
      },
      {
        resolve: { alias },
        test: { name: 'web', include: ['apps/web/src/**/*.test.{ts,tsx}'], testTimeout: 20_000 },
      },
      {
        resolve: { alias },
        test: { name: 'shell', include: ['apps/api/src/**/*.test.ts', 'scripts/**/*.test.mjs'], testTimeout: 60_000 },
      },
      built('api', ['tests/{api,faults}/**/*.test.ts'], 120_000),
      built('browser', ['tests/browser/**/*.test.ts'], 180_000),
    ],
  },
});
