import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { founding, password } from '../api/cast.js';
import { Client } from '../api/client.js';
import type { Data } from '../api/client.js';
import { Server } from '../api/server.js';
import { visitors } from './browser.js';
import type { Look } from './browser.js';

/** A house of its own: what is loaded here is on nobody else's board. */
let server: Server;
const manager = founding.first.manager.email;

beforeAll(async () => {
  server = await Server.start();
  const { code, output } = await server.run('house/found-cli.js', JSON.stringify(founding.first));
  expect({ code, output }).toMatchObject({ code: 0 });
});
afterAll(() => server.remove());

const { arrive: come } = visitors(() => server.url, password);
const arrive = (path: string, look?: Look, email = manager) => come(path, email, look);

const fleet = {
  'fleet.csv':
    'registration,make,model,kind,base,base_zone\nTW-61D,Corvane,Four,airplane,Wick,America/Chicago\nTW-62D,Corvane,Two,airplane,Wick,\n',
  'units.csv':
    'registration,unit,name,type,functions,fitted_on,serial,software\nTW-61D,com1,Old radio,,com,2004-05-06,S-1,R-1\nTW-61D,box,,Zephyrine 9000,,2004-05-06,Z-1,\n',
};

async function choose(page: Page, files: Readonly<Record<string, string>>): Promise<void> {
  await page
    .getByLabel('Files', { exact: true })
    .setInputFiles(
      Object.entries(files).map(([name, text]) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })),
    );
  await page.getByRole('button', { name: /^Dry run of/ }).click();
  await page.getByRole('heading', { name: 'Dry run done. Nothing was loaded.' }).waitFor();
}

async function stored(): Promise<Data> {
  const client = new Client(server.url);
  await client.signIn(manager, password);
  return (await client.data('{ aircraft(id: "tw-61d") { revision dossier } }')).aircraft;
}

test('a fleet is loaded, and the screen leads on to what is missing', async () => {
  const { page, complaints } = await arrive('/import');
  await choose(page, fleet);
  await page.getByText('taken as uncatalogued units: Zephyrine 9000 (1 unit)').waitFor();
  await page.getByRole('button', { name: 'Load it' }).click();
  await page.getByRole('heading', { name: 'Loaded, all of it.' }).waitFor();
  await page.getByRole('link', { name: 'Go on with what cannot be told yet, most useful first' }).click();
  await page.getByRole('heading', { name: 'Taking on', exact: true }).waitFor();
  await page.getByText('Of 1 of 2 aircraft every flight can be told').waitFor();
  await page.getByRole('link', { name: 'TW-61D, what is missing' }).click();
  await page.getByRole('heading', { name: /^Taking on TW-61D/ }).waitFor();
  expect(complaints).toEqual([]);
});

test('an installation is accepted as found by a named person, after its effect was seen; nothing is accepted by silence', async () => {
  const { page } = await arrive('/aircraft/tw-61d/taking-on');
  const part = page.getByRole('region', { name: 'Accept as found' });
  const record = part.getByRole('button', { name: 'Record it' });
  await part.waitFor();
  expect(await part.getByRole('checkbox', { checked: true }).count()).toBe(0);
  expect(await record.getAttribute('aria-disabled')).toBe('true');
  await part.getByRole('checkbox', { name: 'Old radio, serial S-1' }).check();
  await part.getByText(/^This would settle \d+ answer/).waitFor();
  await part.getByText('Still needed: the name, the certificate number, the day and what was looked at.').waitFor();
  await record.click({ force: true });
  const before = await stored();
  expect(before.dossier.configuration.units.find((each: Data) => each.id === 'com1').approval).toBeNull();

  await part.getByLabel('Name').fill('Wenna Tarrant');
  await part.getByLabel('Certificate number').fill('TW-M-0417');
  await part.getByLabel('Day').fill('2026-01-05');
  await part.getByLabel('What was looked at').fill('Seen in place; entry of 2004, book 2 page 14');
  await record.click();
  await part.waitFor({ state: 'detached' });
  const { revision, dossier } = await stored();
  expect(revision).toBe(before.revision + 1);
  expect(dossier.configuration.units.find((each: Data) => each.id === 'com1').approval).toMatchObject({
    basis: 'as-found',
    document: { title: 'Seen in place; entry of 2004, book 2 page 14' },
    acceptedBy: { asOf: '2026-01-05', by: 'Wenna Tarrant, certificate TW-M-0417' },
  });
});

test('a list is stated to be complete, and what it settled is no longer asked', async () => {
  const { page } = await arrive('/aircraft/tw-61d/taking-on', { width: 360 });
  const asked = page.getByText('Whether the list of directives is complete');
  await asked.waitFor();
  const part = page.getByRole('region', { name: 'State that a list is complete' });
  await part.getByRole('checkbox', { name: 'Directives' }).check();
  await part.getByLabel('Name').fill('Wenna Tarrant');
  await part.getByLabel('Certificate number').fill('TW-M-0417');
  await part.getByLabel('Day').fill('2026-01-05');
  await part.getByRole('button', { name: 'Record it' }).click();
  await asked.waitFor({ state: 'detached' });
  expect((await stored()).dossier.status.completeness).toEqual([
    { list: 'directives', stated: { asOf: '2026-01-05', by: 'Wenna Tarrant, certificate TW-M-0417' } },
  ]);
});

test('what needs a form of its own is begun on the job screen', async () => {
  const { page } = await arrive('/aircraft/tw-61d/taking-on');
  const fold = page.getByText(/^\d+ facts that are recorded together$/).first();
  await fold.waitFor();
  await page.getByRole('link', { name: 'Record the required equipment', exact: true }).last().click();
  await page.getByRole('button', { name: 'Put it on the plan' }).click();
  await page.getByRole('heading', { name: /^1\. Required equipment/ }).waitFor();
  expect(await page.locator('.tw-step select').count()).toBeGreaterThan(20);
});

test('a row that says otherwise is shown, left alone, and taken only when somebody ticks it', async () => {
  const { page } = await arrive('/import');
  const software = async () =>
    (await stored()).dossier.configuration.units.find((each: Data) => each.id === 'com1').software;
  const changed = { 'units.csv': fleet['units.csv'].replace('R-1', 'R-2') };
  await choose(page, changed);
  const table = page.getByRole('table', { name: '1 place where the files say otherwise than what is recorded' });
  const row = table.getByRole('row').filter({ hasText: 'TW-61D' });
  expect(await row.textContent()).toContain('R-1');
  expect(await row.getByRole('checkbox').isChecked()).toBe(false);
  await page.getByRole('button', { name: 'Load it' }).click();
  await page.getByRole('heading', { name: 'Loaded, all of it.' }).waitFor();
  await row.getByText('left as recorded').waitFor();
  expect(await software()).toBe('R-1');

  await choose(page, changed);
  await row.getByRole('checkbox').check();
  await page.getByRole('button', { name: 'Load it' }).click();
  await page.getByRole('heading', { name: 'Loaded, all of it.' }).waitFor();
  await row.getByText('taken from the file').waitFor();
  expect(await software()).toBe('R-2');
});

test('an aircraft record is written out, and taken in again doubles nothing', async () => {
  const { page } = await arrive('/aircraft/tw-61d');
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Write out' }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('tw-61d.json');
  const text = readFileSync(await file.path(), 'utf8');
  expect(JSON.parse(text).aircraft[0].registration).toBe('TW-61D');
  await page.goto(`${server.url}/import`);
  await choose(page, { 'tw-61d.json': text });
  await page.getByText('0 aircraft new, 0 changed, 1 as they were; 0 entries; no bad row.').waitFor();
});

test('an auditor may look and not record; a dispatcher finds no such screen in the navigation', async () => {
  const { page } = await arrive('/aircraft/tw-61d/taking-on', {}, 'auditor@one.example');
  const part = page.getByRole('region', { name: 'State that a list is complete' });
  await part.getByText('Your role may look here, not record.').waitFor();
  const { page: desk } = await arrive('/', {}, 'dispatcher@one.example');
  await desk.getByRole('link', { name: 'Findings' }).waitFor();
  expect(await desk.getByRole('link', { name: 'Taking on' }).count()).toBe(0);
});

test.each([
  [1440, false],
  [360, true],
])('is usable at %i px, dark %s', async (width, dark) => {
  const someone = await arrive('/taking-on', { width, dark });
  const { page } = someone;
  await page.getByRole('link', { name: 'TW-61D, what is missing' }).waitFor();
  for (const path of ['/taking-on', '/aircraft/tw-61d/taking-on', '/import']) {
    await page.goto(`${server.url}${path}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.locator('.tw-state-loading').first().waitFor({ state: 'detached' });
    expect({ path, faults: await someone.faults() }).toEqual({ path, faults: [] });
  }
  expect(someone.complaints).toEqual([]);
});
