import { expect, test } from 'vitest';
import { accounts, add, visitors } from './browser.js';
import type { Look, Person } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;

const { arrive: come } = visitors(() => url);
const arrive = (path: string, email: string = accounts.technician, look?: Look) => come(path, email, look);

const entry = (someone: Person, words: RegExp | string) =>
  someone.page.getByRole('article').filter({ has: someone.page.getByRole('heading', { name: words, level: 2 }) });

test('work that was recorded stands among the entries with who, when, what it lost and what changed', async () => {
  const someone = await arrive('/aircraft/tw-27k/job');
  const { page } = someone;
  const form = await add(page, 'Hold the aircraft');
  await form.getByLabel('Reason').fill('Waiting for a strut');
  await page.getByRole('button', { name: 'Record the work' }).click();
  await page
    .getByText(/entry number/i)
    .first()
    .waitFor();
  await page.goto(`${url}/aircraft/tw-27k`);
  await page.getByRole('link', { name: /^All \d+ entries/ }).click();
  const placed = entry(someone, /Placed a hold: “Waiting for a strut”/);
  await placed.waitFor();
  await placed.getByText(/Jory Pellam, Mechanic TW-M-0417/).waitFor();
  await placed.getByText(/^It .*opened \d+ finding/).click();
  await placed
    .getByText(/Opened: .*Waiting for a strut/)
    .first()
    .waitFor();
  await placed.getByText('1 thing changed on the record').click();
  await placed.getByText('Hold “Waiting for a strut”: added').waitFor();
  expect(someone.complaints).toEqual([]);
});

test('a correction points at what it corrects, and that one at the correction', async () => {
  const someone = await arrive('/meters');
  const { page } = someone;
  await page.getByRole('button', { name: 'Replace, correct, define Tachometer of TW-26K' }).click();
  await page.getByLabel('The last reading was wrong').check();
  await page.getByLabel('The dial really showed').fill('12');
  await page.getByRole('button', { name: 'Record it' }).click();
  await page.getByText('Say why; it stands with the correction.').waitFor();
  await page.getByLabel('Why', { exact: true }).fill('Read from another aircraft');
  await page.getByRole('button', { name: 'Record it' }).click();
  await page.getByText('Recorded on TW-26K.').waitFor();
  await page.goto(`${url}/aircraft/tw-26k/history`);
  const correction = entry(someone, /Corrected the reading of Tachometer: 12\.0 h/);
  await correction.getByText('Because: Read from another aircraft').waitFor();
  const number = ((await correction.getByRole('heading', { level: 2 }).textContent()) ?? '').match(/Entry (\d+)/)?.[1];
  await correction.getByRole('link', { name: /^entry \d+$/ }).click();
  const corrected = page.locator('.tw-entry[data-chosen]');
  await corrected.getByText('Corrected or completed by').waitFor();
  await corrected.getByRole('link', { name: `entry ${number}` }).waitFor();
  expect(someone.complaints).toEqual([]);
});

test('the record as it stood is a look back: by what was known then, and by what is known now', async () => {
  const someone = await arrive('/aircraft/tw-09q/history');
  const { page } = someone;
  await page
    .getByRole('link', { name: 'Show more' })
    .or(page.getByRole('button', { name: /^Show more/ }))
    .click();
  await page
    .getByRole('link', { name: /^As it stood after entry/ })
    .last()
    .click();
  await page.getByRole('heading', { name: /TW-09Q as it stood on/, level: 1 }).waitFor();
  await page.getByText('Nothing can be recorded here').waitFor();
  await page.getByText('Today’s rules answer everything as it was answered then.').waitFor();
  await page.getByText(/^The last entry written by then is entry \d+\./).waitFor();
  expect(await page.getByRole('button', { name: /record/i }).count()).toBe(0);
  // The choice stands in the address: the button shows it once the page has followed.
  await page.getByLabel(/^Now about then/).click();
  await page.getByText(/The record rests on \d+ entries about days until then/).waitFor();
  await page.getByRole('link', { name: 'Choose a day instead' }).click();
  await page.getByLabel(/^Then:/).click();
  await expect.poll(() => page.getByLabel(/^Then:/).isChecked(), { timeout: 10_000 }).toBe(true);
  await page.getByLabel('As it stood on (empty: now)').fill('2001-01-01T00:00');
  await page.getByText('Nothing had been written down yet.').waitFor();
  expect(someone.complaints).toEqual([]);
});

test('a dispatcher is told that entries are not for that role, and is offered none', async () => {
  const someone = await arrive('/aircraft/tw-09q', accounts.dispatcher);
  const { page } = someone;
  await page.getByRole('heading', { name: /TW-09Q/, level: 1 }).waitFor();
  expect(await page.getByRole('link', { name: /entries/i }).count()).toBe(0);
  for (const path of ['history', 'history/then']) {
    await page.goto(`${url}/aircraft/tw-09q/${path}`);
    await page.getByText('The entries are not shown to your role.').waitFor();
  }
  expect(someone.complaints).toEqual([]);
});

test.each([
  ['wide', {}],
  ['on a phone, dark', { width: 360, dark: true }],
] as const)('entries and look back: nothing for axe to find, no sideways scrolling, %s', async (_name, look) => {
  const someone = await arrive('/aircraft/tw-09q/history', accounts.auditor, look);
  const { page } = someone;
  await page.getByRole('article').first().waitFor();
  await page.locator('.tw-entry-part > summary').first().click();
  for (const path of [null, '/aircraft/tw-09q/history/then?entry=70&known=now']) {
    if (path !== null) {
      await page.goto(`${url}${path}`);
      await page.getByRole('heading', { name: 'The record' }).waitFor();
    }
    expect(await someone.faults()).toEqual([]);
  }
  expect(someone.complaints).toEqual([]);
});
