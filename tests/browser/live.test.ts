import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { Client } from '../api/client.js';
import { accounts, add, choose, visitors } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive } = visitors(() => url);
/** Far above what it takes: what it took is printed. */
const SOON = { timeout: 15_000, interval: 20 };

/** The reading of the tachometer that a screen shows. */
async function tachometer(page: Page): Promise<number> {
  const row = page.getByRole('row', { name: /^Tachometer/ });
  await row.waitFor();
  return Number(/([\d.]+) h/.exec((await row.textContent()) ?? '')?.[1]);
}

/** Records a reading on the job screen of an aircraft, somewhat above the last one. */
async function recordReading(page: Page, aircraft: string, last: number): Promise<number> {
  await page.goto(`${url}/aircraft/${aircraft}/job`);
  const reading = await add(page, 'Read a meter');
  await choose(reading.getByLabel('Meter'), 'Tachometer');
  const dial = Math.round((last + 0.4) * 10) / 10;
  await reading.getByLabel('The dial shows').fill(dial.toFixed(1));
  await page.getByRole('button', { name: 'Record the work' }).click();
  await page.getByText(/^Recorded: entry number/).waitFor();
  return dial;
}

async function follows(page: Page, dial: number, what: string): Promise<void> {
  const from = performance.now();
  await expect.poll(() => tachometer(page), SOON).toBe(dial);
  console.log(`${what}: ${Math.round(performance.now() - from)} ms after the other browser showed it as recorded`);
}

test('what one person records the other sees, without loading the page again; also after the network was away', async () => {
  const watcher = await arrive('/aircraft/tw-06q', accounts.auditor);
  const { page } = watcher;
  const last = await tachometer(page);
  // Whatever loads the page again would lose this.
  await page.evaluate(() => Object.assign(window, { stillTheSamePage: true }));
  const technician = await arrive('/', accounts.technician);

  const first = await recordReading(technician.page, 'tw-06q', last);
  await follows(page, first, 'the other browser followed');

  await page.context().setOffline(true);
  const strip = page.getByRole('status').filter({ hasText: 'Not live: last answer at' });
  await strip.waitFor();
  expect(await strip.textContent()).toMatch(/No network\. Not live: last answer at \d\d:\d\d/);
  const second = await recordReading(technician.page, 'tw-06q', first);
  expect(await tachometer(page)).toBe(first);
  await page.context().setOffline(false);
  await follows(page, second, 'after the network was back, the other browser followed');
  await strip.waitFor({ state: 'detached' });
  expect(await page.evaluate(() => 'stillTheSamePage' in window)).toBe(true);
  expect(technician.complaints).toEqual([]);
});

test('the board itself follows, and a plan that somebody works on stays and says what changed', async () => {
  const dispatcher = await arrive('/?text=TW-07Q', accounts.dispatcher);
  const news = dispatcher.page.locator('.tw-news');
  await news.waitFor();
  const before = await news.textContent();
  const cells = dispatcher.page.getByRole('link', { name: /^TW-07Q, / });
  const answers = async () => (await cells.allTextContents()).join(' ');
  expect(await answers()).not.toContain('Held');
  const planner = await arrive('/aircraft/tw-07q/job', accounts.manager);
  const defect = await add(planner.page, 'Report a defect');
  await defect.getByLabel('Text').fill('Left map light is out');

  const client = new Client(url);
  await client.signIn(accounts.technician, 'wing-and-tally');
  const { aircraft } = await client.data('{ aircraft(id: "tw-07q") { revision } }');
  const now = `${new Date().toISOString().slice(0, 16)}Z`;
  const hold = { id: 'live-test', reason: 'Waiting for a part', by: 'Hangar log', from: now, until: null };
  const answer = await client.record('tw-07q', aircraft.revision, [
    { kind: 'hold.place', version: 1, hold } as { kind: string },
  ]);
  expect(answer.errors).toBeUndefined();

  await expect.poll(() => news.textContent(), SOON).not.toBe(before);
  await expect.poll(answers, SOON).toContain('Held');
  const told = planner.page.getByRole('alert').filter({ hasText: 'was changed meanwhile' });
  await told
    .getByText(/Placed a hold: “Waiting for a part”/)
    .first()
    .waitFor();
  expect(await defect.getByLabel('Text').inputValue()).toBe('Left map light is out');
  await told.getByRole('button', { name: /go on with my plan/ }).click();
  await defect.getByRole('button', { name: 'Leave this out' }).click();
  expect([...dispatcher.complaints, ...planner.complaints]).toEqual([]);
});

test('signing out in one window ends the session in the other, in words', async () => {
  const someone = await arrive('/', accounts.dispatcher);
  const { page } = someone;
  await page.getByRole('table', { name: 'Aircraft by flight profile' }).waitFor();
  const other = await page.context().newPage();
  await other.goto(url);
  await other.getByRole('button', { name: 'Sign out' }).click();
  await other.getByLabel('E-mail').waitFor();
  await page.getByRole('alert').filter({ hasText: 'Your session has ended' }).waitFor();
  await page.getByRole('table', { name: 'Aircraft by flight profile' }).waitFor();
});

test.each([
  ['wide', {}],
  ['on a phone, dark', { width: 360, dark: true }],
] as const)('the strip that says "not live": nothing for axe to find, %s', async (_name, look) => {
  const someone = await arrive('/', accounts.dispatcher, look);
  const { page } = someone;
  // Only the socket is kept away: queries are answered.
  await page.routeWebSocket('**/graphql', (socket) => void socket.close({ code: 1013 }));
  await page.reload();
  await page
    .getByRole('status')
    .filter({ hasText: /^Not live: last answer at \d\d:\d\d/ })
    .waitFor();
  expect(await someone.faults()).toEqual([]);
});
