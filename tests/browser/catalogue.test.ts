import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { accounts, choose, visitors, work } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive } = visitors(() => url);

const check = (page: Page) => page.getByRole('button', { name: /^Check/ }).click();
const panel = (page: Page) => page.getByRole('region', { name: 'Who is affected' });
const mass = (page: Page) => page.getByRole('textbox', { name: /^Mass/ });
const revisionOf = (page: Page) => page.getByLabel('Revision of the manual');

/** From the list to the page of a type by its name. */
async function openType(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: new RegExp(name) }).click();
  await page.getByRole('heading', { name: 'What the manual says' }).waitFor();
}

async function startRevising(page: Page, name: string): Promise<void> {
  await openType(page, name);
  await page.getByRole('link', { name: 'Revise', exact: true }).click();
  await revisionOf(page).waitFor();
}

test('a type is entered from its manual; what is missing is named at its field, and a reload loses nothing', async () => {
  const { page, complaints } = await arrive('/catalogue', accounts.technician);
  await page.getByRole('link', { name: 'Enter a type' }).click();
  await page.getByRole('heading', { name: 'Enter a type' }).waitFor();
  await page.getByLabel('Maker').fill('Ardmoor Instruments');
  await page.getByLabel('Name', { exact: true }).fill('AM 4 audio panel');
  await page.getByLabel('Part number').fill('AI-400');
  await page.getByLabel('Short name').fill('am 4');
  await page.getByText('Use 1 to 80 letters, digits and . _ : > / -').waitFor();
  await page.getByLabel('Short name').fill('am-4');
  await page.getByRole('group', { name: 'What the unit does' }).getByLabel('Audio').check();
  let sent = 0;
  page.on('request', (request) => {
    if (/previewType|enterType/.test(request.postData() ?? '')) sent += 1;
  });
  await check(page);
  await panel(page).getByText('Identity and document').waitFor();
  expect(await page.getByLabel('Installation manual').getAttribute('aria-invalid')).toBe('true');
  expect(await revisionOf(page).getAttribute('aria-invalid')).toBe('true');
  expect(sent).toBe(0);

  await page.getByLabel('Installation manual').fill('AM 4 installation manual');
  await page.reload();
  expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('AM 4 audio panel');
  await revisionOf(page).fill('A');
  await check(page);
  await page.getByRole('button', { name: 'Save the entry' }).click();
  await page.getByRole('heading', { name: 'Ardmoor Instruments AM 4 audio panel' }).waitFor();
  await page.getByRole('row', { name: /AM 4 installation manual, revision A.*in force.*Jory Pellam/ }).waitFor();
  await page.getByText('The product is in the catalogue.').waitFor();

  // The draft went with the entry; the same product again is refused at its short name.
  await page.goto(`${url}/catalogue/new`);
  expect(await page.getByLabel('Maker').inputValue()).toBe('');
  await page.goto(`${url}/catalogue?text=AM+4`);
  await openType(page, 'AM 4 audio panel');
  await page.getByRole('link', { name: 'Copy as another product' }).click();
  await page.getByLabel('Name', { exact: true }).fill('AM 4B audio panel');
  await page.getByLabel('Part number').fill('AI-401');
  await page.getByLabel('Short name').fill('am-4');
  await page.getByLabel('Installation manual').fill('AM 4B installation manual');
  await revisionOf(page).fill('A');
  await check(page);
  await page.getByText('The catalogue has a product of the short name am-4').waitFor();
  expect(await page.getByLabel('Short name').getAttribute('aria-invalid')).toBe('true');
  await page.getByLabel('Short name').fill('am-4b');
  await check(page);
  await page.getByRole('button', { name: 'Save the entry' }).click();
  await page.getByRole('heading', { name: 'Ardmoor Instruments AM 4B audio panel' }).waitFor();
  expect(complaints).toEqual([]);
});

test('before a revision is saved it shows which aircraft would be judged otherwise', async () => {
  const { page, complaints } = await arrive('/catalogue', accounts.technician);
  await startRevising(page, 'QN 52 navigator');
  const inForce = await revisionOf(page).inputValue();
  await revisionOf(page).fill('Z');
  await page.getByRole('region', { name: 'Limitations' }).getByRole('button', { name: 'Add a row' }).click();
  const limit = page.getByRole('group', { name: 'Limitation 2' });
  await choose(limit.getByLabel('Kind'), 'Requires');
  await limit.getByRole('group', { name: 'Gives this' }).getByLabel('GNSS').check();
  await limit.getByRole('group', { name: 'Only joined to a unit that does' }).getByLabel('DME').check();
  await limit.getByLabel('Document').fill('QN 52 installation manual');
  await limit.getByLabel('Paragraph').fill('3.9');
  await check(page);
  await panel(page)
    .getByText(/^\d+ aircraft have a unit of this product/)
    .waitFor();
  await panel(page).getByText('TW-02Q').waitFor();
  await panel(page).getByText('GNSS navigation').first().waitFor();
  // Another word typed, and what was judged is no longer what stands there.
  await revisionOf(page).fill('ZA');
  await panel(page).getByText('TW-02Q').waitFor({ state: 'detached' });
  expect(await page.getByRole('button', { name: 'Save the new version' }).count()).toBe(0);
  await page.getByRole('button', { name: 'Discard what I wrote' }).click();
  expect(await revisionOf(page).inputValue()).toBe(inForce);
  expect(complaints).toEqual([]);
});

test('two people revise one type: the second is told, keeps the draft, saves, and moves an aircraft', async () => {
  const first = await arrive('/catalogue', accounts.technician);
  await startRevising(first.page, 'OE 5');
  await mass(first.page).fill('0.6');

  const second = await arrive('/catalogue', accounts.manager);
  await startRevising(second.page, 'OE 5');
  await revisionOf(second.page).fill('R');
  await check(second.page);
  await second.page.getByRole('button', { name: 'Save the new version' }).click();
  await second.page.getByRole('row', { name: /revision R.*in force/ }).waitFor();

  const { page } = first;
  await check(page);
  const told = page.getByRole('alert').filter({ hasText: 'was revised meanwhile' });
  await told.getByText(/put .* revision R in force/).waitFor();
  await told.getByText('Your draft takes over what you had not touched: Revision of the manual (now R).').waitFor();
  expect(await mass(page).inputValue()).toBe('0.6');
  await told.getByRole('button', { name: /go on with my draft/ }).click();
  expect(await revisionOf(page).inputValue()).toBe('R');
  expect(await mass(page).inputValue()).toBe('0.6');
  await check(page);
  await page.getByRole('button', { name: 'Save the new version' }).click();
  await page.getByRole('heading', { name: 'Aircraft under an older version' }).waitFor();

  await page.getByRole('button', { name: 'Show what moving them would do' }).click();
  const plan = page.getByRole('link', { name: /^Plan it for/ }).first();
  await plan.click();
  await page.getByRole('button', { name: 'Put it on the plan' }).click();
  await work(page, 1).getByText('Complete what is known of a unit').waitFor();
  await page.getByRole('button', { name: 'Record the work' }).click();
  await page.getByText(/^Recorded: entry number/).waitFor();
  expect(await page.getByRole('button', { name: 'Put it on the plan' }).count()).toBe(0);
  expect([...first.complaints, ...second.complaints]).toEqual([]);
});

test('a lost connection loses nothing that was typed', async () => {
  const { page } = await arrive('/catalogue', accounts.technician);
  await startRevising(page, 'QN 31 navigator');
  await revisionOf(page).fill('Y');
  await page.context().setOffline(true);
  await check(page);
  await panel(page).getByText('The server cannot be reached from here.').waitFor();
  await panel(page).getByText('Your draft is kept on this device.').waitFor();
  expect(await revisionOf(page).inputValue()).toBe('Y');
  await page.context().setOffline(false);
  await check(page);
  await page.getByRole('button', { name: 'Save the new version' }).waitFor();
  await panel(page).getByText('The server cannot be reached from here.').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Discard what I wrote' }).click();
});

test('who may only read is offered nothing to write, and told so where the address says it', async () => {
  const { page } = await arrive('/catalogue', accounts.dispatcher);
  await openType(page, 'QN 31 navigator');
  expect(await page.getByRole('link', { name: /^(Revise|Copy)/ }).count()).toBe(0);
  await page.goto(`${url}/catalogue/new`);
  await page.getByText('Your role may read the catalogue, not write in it.').waitFor();
});

test.each([
  ['wide', {}],
  ['on a phone, dark', { width: 360, dark: true }],
] as const)('nothing for axe to find and no sideways scrolling, %s', async (_name, look) => {
  const someone = await arrive('/catalogue', accounts.technician, look);
  const { page } = someone;
  const seen = async (place: string) => {
    await someone.settled();
    expect(await someone.faults(), place).toEqual([]);
  };
  await page.getByRole('link', { name: /QN 66/ }).waitFor();
  await seen('the list');
  await openType(page, 'QN 66');
  await seen('the page of a type');
  await page.getByRole('link', { name: 'Revise', exact: true }).click();
  await revisionOf(page).fill('Y');
  for (const row of await page.locator('.tw-row-fold > summary').all()) await row.click();
  await page.getByRole('region', { name: 'Limitations' }).getByRole('button', { name: 'Add a row' }).click();
  await check(page);
  await panel(page).getByRole('alert').waitFor();
  await seen('the form with something to mend');
  await page
    .getByRole('button', { name: /^Take out row/ })
    .last()
    .click();
  await check(page);
  await page.getByRole('button', { name: 'Save the new version' }).waitFor();
  await seen('the form with who is affected');
  await page.getByRole('button', { name: 'Discard what I wrote' }).click();
});
