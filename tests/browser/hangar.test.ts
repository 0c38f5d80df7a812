import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { accounts, add, choose, visitors, work } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive, come } = visitors(() => url);

/** Plans a reading of the tachometer, so many hours above the last one and so many minutes ago; gives the dial. */
async function planReading(page: Page, last: number, above: number, minutesAgo = 0): Promise<string> {
  const reading = await add(page, 'Read a meter');
  const dial = (last + above).toFixed(1);
  await choose(reading.getByLabel('Meter'), 'Tachometer');
  await reading.getByLabel('The dial shows').fill(dial);
  const asOf = reading.getByLabel(/^As of/);
  const earlier = Date.parse(`${await asOf.inputValue()}Z`) - minutesAgo * 60_000;
  await asOf.fill(new Date(earlier).toISOString().slice(0, 16));
  return dial;
}

/** What the aircraft screen shows for the tachometer. */
async function tachometer(page: Page): Promise<number> {
  const row = page.getByRole('row', { name: /^Tachometer/ });
  await row.waitFor();
  return Number(/([\d.]+) h/.exec((await row.textContent()) ?? '')?.[1]);
}

const record = (page: Page) => page.getByRole('button', { name: 'Record the work' }).click();

test('two people work on one aircraft: the second is told who did what, and loses nothing', async () => {
  const first = await arrive('/aircraft/tw-05q', accounts.technician);
  // Out of touch, as at the far end of the hangar: the record is seen to have moved only when the work is sent.
  await first.page.routeWebSocket('**/graphql', (socket) => void socket.close({ code: 1013 }));
  await first.page.reload();
  const last = await tachometer(first.page);
  await first.page.getByRole('link', { name: 'Plan or record work' }).click();
  const dial = await planReading(first.page, last, 0.8);

  const second = await arrive('/aircraft/tw-05q/job', accounts.manager);
  // The other one read it before, whichever minute it is: a reading never goes before one that is recorded.
  await planReading(second.page, last, 0.3, 10);
  await record(second.page);
  await second.page.getByText(/^Recorded: entry number/).waitFor();

  await record(first.page);
  const told = first.page.getByRole('alert').filter({ hasText: 'was changed meanwhile' });
  await told.waitFor();
  await told.getByText(/Read Tachometer: [\d.]+ h/).waitFor();
  expect(await work(first.page, 1).getByLabel('The dial shows').inputValue()).toBe(dial);

  await told.getByRole('button', { name: /go on with my plan/ }).click();
  await record(first.page);
  await first.page.getByText(/^Recorded: entry number/).waitFor();
  expect([...first.complaints, ...second.complaints]).toEqual([]);
});

test('wrong input is named at its field with the way out, and is not sent', async () => {
  const { page } = await arrive('/aircraft/tw-04q', accounts.technician);
  const last = await tachometer(page);
  await page.getByRole('link', { name: 'Plan or record work' }).click();
  await planReading(page, last, -1);
  const dial = work(page, 1).getByLabel('The dial shows');
  await work(page, 1)
    .getByText(/would run backwards/)
    .waitFor();
  expect(await dial.getAttribute('aria-invalid')).toBe('true');
  await dial.fill('12,5');
  await work(page, 1).getByText('This is not a number.').waitFor();
  await dial.fill('');
  expect(await dial.getAttribute('aria-invalid')).toBeNull();
  let sent = 0;
  page.on('request', (request) => {
    if (request.postData()?.includes('commitChanges')) sent += 1;
  });
  await record(page);
  await work(page, 1).getByText('This is still empty. Fill it in.').waitFor();
  await page.getByText('Not recorded: something is missing or wrong in no. 1.').waitFor();
  expect(sent).toBe(0);
});

test('what was typed is there again after the page was left', async () => {
  const { page } = await arrive('/aircraft/tw-03q/job', accounts.technician);
  const defect = await add(page, 'Report a defect');
  await defect.getByLabel('Text').fill('Left map light is out');
  await page.reload();
  await work(page, 1).waitFor();
  expect(await work(page, 1).getByLabel('Text').inputValue()).toBe('Left map light is out');
  await work(page, 1).getByRole('button', { name: 'Leave this out' }).click();
});

test('readings are judged while they are typed', async () => {
  const { page } = await arrive('/aircraft/tw-03q/job', accounts.technician);
  const entry = await add(page, 'Record a test or an entry');
  await choose(entry.getByLabel('Kind', { exact: true }), 'VOR check');
  await choose(entry.getByLabel(/^Method/), 'Dual');
  await entry.getByLabel(/^Indicated/).fill('359');
  await entry.getByLabel(/^Other indicated/).fill('5');
  const judged = entry.getByRole('region', { name: /Readings judged/ });
  await judged.getByText('Out of tolerance').first().waitFor();
  await entry.getByLabel(/^Other indicated/).fill('3');
  await judged.getByText('In tolerance').first().waitFor();
  expect(await judged.getByText('Out of tolerance').count()).toBe(0);
});

test.each([
  ['wide', {}],
  ['on a phone, dark', { width: 360, dark: true }],
] as const)('a plan with forms, readings and effect open: nothing for axe to find, %s', async (_name, look) => {
  const someone = await arrive('/aircraft/tw-02q/job', accounts.technician, look);
  const { page } = someone;
  const fit = await add(page, 'Fit a unit');
  await fit.getByRole('group', { name: 'Approval of this installation' }).getByLabel('Recorded').first().check();
  const entry = await add(page, 'Record a test or an entry');
  await choose(entry.getByLabel('Kind', { exact: true }), 'Altimeter test');
  await entry
    .getByLabel(/^Tested to/)
    .first()
    .fill('2000');
  await record(page);
  await page.getByText(/^Not recorded: something is missing or wrong/).waitFor();
  expect(await someone.faults()).toEqual([]);
  // The check itself finds what is wrong: a picture without words.
  await page.evaluate(() => document.querySelector('main')?.append(document.createElement('img')));
  expect(await someone.faults()).toContain('image-alt: img');
});

test('from sign-in to the reason of an answer with the keyboard alone', async () => {
  const someone = await come();
  const { page } = someone;
  await page.goto(url);
  await page.getByLabel('E-mail').waitFor();
  await page.keyboard.type(accounts.dispatcher);
  await page.keyboard.press('Tab');
  await page.keyboard.type('wing-and-tally');
  await page.keyboard.press('Enter');
  await page
    .getByRole('link', { name: /^TW-\d\dQ, .*: No/ })
    .first()
    .waitFor();
  await page.keyboard.press('Tab');
  expect(await focused(page)).toBe('Skip to the screen');
  await page.keyboard.press('Enter');
  await tabTo(page, /: No(,|$)/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'What it may be used for' }).waitFor();
  await tabTo(page, /\.$/, 'SUMMARY');
  await page.keyboard.press('Enter');
  await page.getByText('The rule asks:').first().waitFor();
});

async function focused(page: Page, tag?: string): Promise<string> {
  return await page.evaluate((wanted) => {
    const at = document.activeElement;
    if (!at || (wanted && at.tagName !== wanted)) return '';
    return at.getAttribute('aria-label') ?? at.textContent ?? '';
  }, tag);
}

async function tabTo(page: Page, name: RegExp, tag?: string): Promise<void> {
  for (let presses = 0; presses < 150; presses += 1) {
    await page.keyboard.press('Tab');
    if (name.test(await focused(page, tag))) return;
  }
  throw new Error(`150 presses of Tab did not lead to ${String(name)}`);
}

test('a slow network shows that something is on its way, and then the board', async () => {
  const someone = await arrive('/rules', accounts.dispatcher);
  const { page } = someone;
  await page.getByRole('heading', { name: 'Rules' }).waitFor();
  await page.route('**/graphql', async (route) => {
    await new Promise((done) => setTimeout(done, 1500));
    await route.continue();
  });
  await page.getByRole('link', { name: 'Ready board' }).click();
  await page.getByRole('status').filter({ hasText: 'Loading the board' }).waitFor();
  await page.getByRole('table', { name: 'Aircraft by flight profile' }).waitFor();
});

test('without a network the page says so and keeps what is on it', async () => {
  const someone = await arrive('/', accounts.dispatcher);
  const { page } = someone;
  await page.getByRole('table', { name: 'Aircraft by flight profile' }).waitFor();
  await page.context().setOffline(true);
  await page.getByText('No network.').waitFor();
  await page.getByRole('table', { name: 'Aircraft by flight profile' }).waitFor();
  await page.context().setOffline(false);
  await page.getByText('No network.').waitFor({ state: 'detached' });
});

test('a question in the address is asked again by whoever opens it', async () => {
  const { page } = await arrive('/?profile=ferry-crew&ready=yes&hours=2.5', accounts.dispatcher);
  await page.getByText('2.5 flight hours from the last reading').waitFor();
  const rows = page.getByRole('table', { name: 'Aircraft by flight profile' }).getByRole('row');
  const answers = await rows.getByRole('link', { name: /VFR ferry/ }).allTextContents();
  expect(answers.length).toBeGreaterThan(0);
  expect(answers.every((answer) => answer.startsWith('Yes'))).toBe(true);
});

test.each([
  ['wide and light', {}],
  ['on a phone and dark', { width: 360, dark: true }],
] as const)('the other screens: nothing for axe to find and no sideways scrolling, %s', async (_name, look) => {
  const someone = await arrive('/', accounts.manager, look);
  const { page } = someone;
  for (const screen of ['Findings', 'Due ahead', 'Databases', 'Catalogue', 'Rules', 'Hours and prices', 'Import']) {
    await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: screen }).click();
    await page.getByRole('heading', { name: screen, level: 1 }).waitFor();
    await someone.settled();
    expect(await someone.faults(), screen).toEqual([]);
  }
  expect(someone.complaints).toEqual([]);
});

test('a dispatcher sees what would bring a lost flight back, and what that rests on', async () => {
  const { page, complaints } = await arrive('/aircraft/tw-06q', accounts.dispatcher);
  const profile = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: /^VFR rental into class B/ }) });
  await profile.getByText('What would bring it back').click();
  const least = profile.getByRole('region', { name: 'Ways back' }).getByRole('listitem').first();
  await least.waitFor();
  expect(await least.textContent()).toMatch(/^Transponder test of OT 90/);
  expect(await profile.textContent()).toMatch(/Assumes that each test passes and a person who may signs it/);
  expect(complaints).toEqual([]);
});
