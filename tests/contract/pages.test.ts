import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { matrixPage } from './pages/matrix-page.js';
import { rulesPage } from './pages/rules-page.js';

/**
 * Pages that are made from what the rules say. A page that no longer says it fails here; to make the pages anew:
 * `npx vitest run --project rules tests/contract/pages.test.ts -u`, and read what changed.
 */
it.each([
  ['matrix.md', matrixPage],
  ['rules.md', rulesPage],
])('docs/%s says what the rules say', async (name, page) => {
  const path = fileURLToPath(new URL(`../../docs/${name}`, import.meta.url));
  expect(existsSync(path), `docs/${name} is missing`).toBe(true);
  await expect(page()).toMatchFileSnapshot(path);
});
