import { format } from 'prettier';
import { expect, it } from 'vitest';
import { formatDocument } from './format-doc.js';

it('docs/import-format.md says what the program reads', async () => {
  const text = await format(formatDocument(), { parser: 'markdown', printWidth: 120 });
  await expect(text).toMatchFileSnapshot('../../../../docs/import-format.md');
});
