import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { accounts, visitors } from './browser.js';
import type { Look, Person } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
/** Recorded, judged and shown again, also on a machine that is busy. */
const soon = { timeout: 20_000 };

const { arrive: come } = visitors(() => url);

async function arrive(look?: Look): Promise<Person> {
  const someone = await come('/meters', accounts.technician, look);
  await dial(someone.page, 'TW-08Q').waitFor();
  return someone;
}

const dial = (page: Page, registration: string, meter = 'Tachometer'): Locator =>
  page.getByLabel(`The dial shows, ${meter} of ${registration}`);
const line = (page: Page, registration: string, meter = 'Tachometer'): Locator =>
  page.getByRole('row').filter({ has: dial(page, registration, meter) });

async function last(page: Page, registration: string, meter?: string): Promise<number> {
  return Number(/([\d.]+) h/.exec((await line(page, registration, meter).textContent()) ?? '')?.[1]);
}

const record = (page: Page) => page.getByRole('button', { name: 'Record the readings' }).click();

test('a line of aircraft is entered with the keyboard; what is unlikely is asked before it is recorded', async () => {
  const someone = await arrive();
  const { page } = someone;
  const [eighth, tenth] = [await last(page, 'TW-08Q'), await last(page, 'TW-10Q')];
  await dial(page, 'TW-08Q').focus();
  await page.keyboard.type((eighth + 0.3).toFixed(1));
  await page.keyboard.press('Enter');
  const next = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
  expect(next).toBe('The dial shows, Tachometer of TW-09Q');
  await page.keyboard.press('Shift+Enter');
  expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe((eighth + 0.3).toFixed(1));

  // Lower than the last reading: it waits, and the other one is recorded all the same.
  await dial(page, 'TW-10Q').fill((tenth - 2).toFixed(1));
  await line(page, 'TW-10Q')
    .getByText(/Is that right\? Lower than the last reading/)
    .waitFor();
  await record(page);
  const report = page.getByRole('status', { name: 'What was recorded' });
  await report.getByText('1 aircraft recorded, 1 not').waitFor();
  await report.getByText('Waits for you').waitFor();
  await expect.poll(() => last(page, 'TW-08Q'), soon).toBe(Math.round((eighth + 0.3) * 10) / 10);
  expect(await dial(page, 'TW-08Q').inputValue()).toBe('');
  expect(await dial(page, 'TW-10Q').inputValue()).toBe((tenth - 2).toFixed(1));

  // With a reason it is a correction.
  await line(page, 'TW-10Q').getByLabel('Why is it lower?').fill('The last one was misread');
  await line(page, 'TW-10Q')
    .getByLabel(/^Yes, .* is right$/)
    .check();
  await record(page);
  await report.getByText('1 aircraft recorded.').waitFor();
  await expect.poll(() => last(page, 'TW-10Q'), soon).toBe(Math.round((tenth - 2) * 10) / 10);
  expect(someone.complaints).toEqual([]);
});

test('lines of a spreadsheet fill the sheet, and each one that found no place is named', async () => {
  const someone = await arrive();
  const { page } = someone;
  const eleventh = await last(page, 'TW-11Q');
  await page.getByText('Paste from a spreadsheet').click();
  const lines = [
    'Registration\tMeter\tReading',
    `TW-11Q\tTachometer\t${(eleventh + 0.2).toFixed(1)}`,
    'TW-99Q\tTachometer\t12.3',
    'TW-12Q\tTachometer\ta lot',
  ].join('\n');
  await page.getByLabel('Lines').fill(lines);
  await page.getByRole('button', { name: 'Fill the sheet' }).click();
  await page.getByText('1 reading filled in.').waitFor();
  await page.getByText('No TW-99Q on this sheet. Check the registration.').waitFor();
  await page.getByText('"a lot" is not a reading.').waitFor();
  expect(await page.getByLabel('Lines').inputValue()).toBe('TW-99Q\tTachometer\t12.3\nTW-12Q\tTachometer\ta lot');
  expect(await dial(page, 'TW-11Q').inputValue()).toBe((eleventh + 0.2).toFixed(1));
  await record(page);
  await expect.poll(() => last(page, 'TW-11Q'), soon).toBe(Math.round((eleventh + 0.2) * 10) / 10);
  expect(someone.complaints).toEqual([]);
});

test('what is typed is still there without a network, and after the page was left', async () => {
  const { page } = await arrive();
  const twelfth = await last(page, 'TW-12Q');
  const typed = (twelfth + 0.4).toFixed(1);
  await dial(page, 'TW-12Q').fill(typed);
  await page.context().setOffline(true);
  await record(page);
  const report = page.getByRole('status', { name: 'What was recorded' });
  await report.getByText('No answer').waitFor();
  await report.getByText(/cannot be reached/).waitFor();
  expect(await dial(page, 'TW-12Q').inputValue()).toBe(typed);
  await page.context().setOffline(false);
  await page.reload();
  await dial(page, 'TW-12Q').waitFor();
  expect(await dial(page, 'TW-12Q').inputValue()).toBe(typed);
  await record(page);
  await report.getByText('1 aircraft recorded.').waitFor();
  await expect.poll(() => last(page, 'TW-12Q'), soon).toBe(Number(typed));
});

test('a new dial, a new meter and the age of readings are recorded from the sheet; the hours go on', async () => {
  const someone = await arrive();
  const { page } = someone;
  const before = await last(page, 'TW-25K');
  await page.getByRole('button', { name: 'Replace, correct, define Tachometer of TW-25K' }).click();
  const open = page.getByRole('region', { name: 'Tachometer of TW-25K' });
  await open.getByLabel('The old dial showed last').fill((before - 1).toFixed(1));
  await open.getByRole('button', { name: 'Record it' }).click();
  await open.getByText(/It already stood at/).waitFor();
  await open.getByLabel('The old dial showed last').fill((before + 0.1).toFixed(1));
  await open.getByLabel('The new dial shows').fill('3.5');
  await open.getByRole('button', { name: 'Record it' }).click();
  await page.getByText('Recorded on TW-25K.').waitFor();
  await expect.poll(() => last(page, 'TW-25K'), soon).toBe(3.5);
  await line(page, 'TW-25K')
    .getByText(`${Math.round((before + 0.1) * 100) / 100} h in all`)
    .waitFor();

  // How long its readings count, and what it is called.
  await page.getByRole('button', { name: 'Replace, correct, define Tachometer of TW-25K' }).click();
  await open.getByLabel('How much it flies, and how long a reading is good for').check();
  await open.getByLabel('A reading is good for, days').fill('0');
  await open.getByRole('button', { name: 'Record it' }).click();
  await open.getByText(/Type days, 1 to 3660/).waitFor();
  await open.getByLabel('A reading is good for, days').fill('12');
  await open.getByRole('button', { name: 'Record it' }).click();
  await open.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Replace, correct, define Tachometer of TW-25K' }).click();
  await open.getByLabel('What the meter is').check();
  await open.getByLabel('Name', { exact: true }).fill('Recording tachometer');
  await open.getByRole('button', { name: 'Record it' }).click();
  await dial(page, 'TW-25K', 'Recording tachometer').waitFor();
  expect(await last(page, 'TW-25K', 'Recording tachometer')).toBe(3.5);

  // Another meter beside it.
  await page.getByRole('button', { name: 'Replace, correct, define Recording tachometer of TW-25K' }).click();
  const another = page.getByRole('region', { name: 'Recording tachometer of TW-25K' });
  await another.getByLabel('The aircraft has another meter').check();
  await another.getByLabel('Name', { exact: true }).fill('Flight log');
  await another.getByRole('button', { name: 'Record it' }).click();
  await dial(page, 'TW-25K', 'Flight log').waitFor();

  // Only what wants reading.
  await page.getByLabel('Last reading', { exact: true }).selectOption({ label: 'too old, or never read' });
  await dial(page, 'TW-25K', 'Recording tachometer').waitFor({ state: 'detached' });
  expect(someone.complaints).toEqual([]);
});

test.each([
  ['wide', {}],
  ['on a phone, dark', { width: 360, dark: true }],
] as const)('the sheet with a question, a fault and pasted lines: nothing for axe to find, %s', async (_name, look) => {
  const someone = await arrive(look);
  const { page } = someone;
  await dial(page, 'TW-21K').fill('0.1');
  await dial(page, 'TW-22K').fill('12x');
  await page.getByText('Paste from a spreadsheet').click();
  await page.getByLabel('Lines').fill('TW-99Q,,5');
  await page.getByRole('button', { name: 'Fill the sheet' }).click();
  await record(page);
  await page.getByText('Waits for you').first().waitFor();
  await page.getByRole('button', { name: 'Replace, correct, define Tachometer of TW-08Q' }).click();
  await page.getByRole('button', { name: 'Record it' }).click();
  await page.getByText('Nothing was recorded: mend the fields above.').waitFor();
  expect(await someone.faults()).toEqual([]);
});
