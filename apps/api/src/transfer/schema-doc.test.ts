import { aircraftFileSchema } from '@tallywing/rules';
import { format } from 'prettier';
import { expect, it } from 'vitest';

it('docs/aircraft-records.schema.json is the form that the program reads and writes', async () => {
  const text = await format(JSON.stringify(aircraftFileSchema()), { parser: 'json', printWidth: 120 });
  await expect(text).toMatchFileSnapshot('../../../../docs/aircraft-records.schema.json');
});
