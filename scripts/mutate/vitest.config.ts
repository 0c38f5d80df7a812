import { fileURLToPath } from 'node:url';
import { configDefaults, defineConfig } from 'vitest/config';

/** The tests that a change of the rule library is shown to: its own, and those that hold it to published figures. */
export default defineConfig({
  root: fileURLToPath(new URL('../../', import.meta.url)),
  test: {
    // As in the main config: pure functions share nothing that a file could spoil for the next.
    isolate: false,
    include: ['libs/rules/**/*.test.ts', 'tests/reference/**/*.test.ts'],
    exclude: [...configDefaults.exclude, ...(process.env.WITHOUT_RULES ? ['libs/rules/src/rules/**'] : [])],
    testTimeout: 60_000,
  },
});
