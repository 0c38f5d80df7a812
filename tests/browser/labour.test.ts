import { expect, test } from 'vitest';
import { accounts, visitors } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive } = visitors(() => url);

test('a manager enters hours and a price, keeps them through a reload and a colleague, and the way back counts with them', async () => {
  const manager = await arrive('/hours', accounts.manager);
  const { page } = manager;
  const save = page.getByRole('button', { name: 'Save hours and prices' });
  await page.getByRole('button', { name: 'Enter our hours: Transponder test' }).click();
  const own = page.getByRole('group', { name: 'Our hours: Transponder test' });
  await own.getByLabel('Typical').fill('0.2');
  expect(await own.textContent()).toContain('Not more than typical.');
  expect(await save.getAttribute('aria-disabled')).toBe('true');
  await own.getByLabel('Low').fill('0.1');
  await own.getByLabel('Typical').fill('4');
  await own.getByLabel('High').fill('6');
  await page.getByLabel('Price of a person-hour').fill('50');
  await page.getByLabel('Currency').fill('Kr');
  expect(await manager.faults()).toEqual([]);

  // Somebody else saves first; what was typed is there after a reload, and is saved over theirs only when they were seen.
  const colleague = await arrive('/hours', accounts.manager);
  await colleague.page.getByRole('button', { name: 'Enter our hours: Weigh the aircraft' }).click();
  await colleague.page.getByRole('button', { name: 'Save hours and prices' }).click();
  await colleague.page.getByText('Hours and prices saved.').waitFor();
  await save.click();
  await page.getByRole('button', { name: 'Load theirs and keep mine' }).click();
  await page.getByText(/^In force: 3 h/).waitFor();
  await page.reload();
  expect(await own.getByLabel('Typical').inputValue()).toBe('4');
  await save.click();
  await page.getByText('Hours and prices saved.').waitFor();

  const technician = await arrive('/aircraft/tw-06q', accounts.technician);
  const profile = technician.page
    .getByRole('listitem')
    .filter({ has: technician.page.getByRole('heading', { name: /^VFR rental into class B/ }) });
  await profile.getByText('What would bring it back').click();
  const ways = profile.getByRole('region', { name: 'Ways back' });
  await ways.getByRole('listitem').first().waitFor();
  expect(await ways.textContent()).toMatch(/Kr \d+ \(\d+ to \d+\)/);

  // Back to the usual, so that the demo stands as it was.
  await page.getByRole('button', { name: 'Back to the usual hours: Transponder test' }).click();
  await page.getByLabel('Price of a person-hour').fill('');
  await page.getByLabel('Currency').fill('');
  await save.click();
  await page.getByRole('button', { name: 'Enter our hours: Transponder test' }).waitFor();
  expect(manager.complaints).toEqual([]);
});
