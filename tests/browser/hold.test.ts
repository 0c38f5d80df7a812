import type { Locator, Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { localTimeAt } from '../../libs/rules/src/index.js';
import { Client } from '../api/client.js';
import { accounts, add, choose, visitors } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive, present } = visitors(() => url);
/** Far above what it takes: what it took is printed. */
const SOON = { timeout: 15_000, interval: 20 };

/** An aircraft of its own for these tests: nobody else's board is disturbed. */
const aircraftId = 'hold-plane';
const registration = 'TW-HLD';
beforeAll(async () => {
  const client = new Client(url);
  await client.signIn(accounts.manager, 'wing-and-tally');
  const { aircraft } = await client.data('{ aircraft(id: "tw-06q") { dossier } }');
  const facts = { ...aircraft.dossier.configuration.aircraft, registration, serial: 'HLD-1' };
  const answer = await client.record(aircraftId, 0, [{ kind: 'aircraft.add', version: 1, aircraft: facts } as never]);
  expect(answer.errors).toBeUndefined();
});

/** What the board says of the aircraft, all profiles together. */
const answers = async (page: Page): Promise<string> =>
  (await page.getByRole('link', { name: new RegExp(`^${registration}, `) }).allTextContents()).join(' ');

async function seen(page: Page, word: string, what: string): Promise<void> {
  const from = performance.now();
  await expect.poll(() => answers(page), SOON).toContain(word);
  console.log(`${what}: ${Math.round(performance.now() - from)} ms`);
}

/** A mechanic for the airframe approves; the number of the certificate is still missing. */
async function signed(page: Page): Promise<void> {
  await page.getByLabel('Who approves the return to service').fill('Ada Brook');
  await choose(page.getByLabel('Certificate', { exact: true }), 'Mechanic');
  await page.getByLabel('Not recorded').last().uncheck();
  await page.getByLabel('Airframe', { exact: true }).check();
}

test('a hold placed from a row of the board is on the other board at once, with its reason; lifted, it is gone', async () => {
  const watcher = await arrive(`/?text=${registration}`, accounts.manager);
  await watcher.page
    .getByRole('link', { name: new RegExp(`^${registration}, `) })
    .first()
    .waitFor();
  expect(await answers(watcher.page)).not.toContain('Held');
  await watcher.page.evaluate(() => Object.assign(window, { stillTheSamePage: true }));

  const dispatcher = await arrive(`/?text=${registration}`, accounts.dispatcher);
  const { page } = dispatcher;
  await page.getByRole('link', { name: `Hold ${registration}` }).click();
  await page.getByRole('button', { name: 'Hold it now' }).click();
  await page.getByText('A reason has 1 to 500 characters. Say in a few words why.').waitFor();
  await page.getByLabel('Why it must not fly').fill('Fuel smell in the cabin');
  await page.getByRole('button', { name: 'Hold it now' }).click();
  await page.getByText('The aircraft is held.').waitFor();
  await seen(watcher.page, 'Held', 'the hold was on the other board');
  await watcher.page.getByText('The aircraft is held: Fuel smell in the cabin').first().waitFor();
  // A dispatcher places holds and lifts none.
  expect(await page.getByRole('button', { name: 'Lift this hold' }).count()).toBe(0);

  const technician = await arrive(`/aircraft/${aircraftId}`, accounts.technician);
  await technician.page.getByRole('button', { name: 'Lift this hold' }).click();
  await technician.page.getByLabel('Why it may fly again').fill('Spilt at fuelling, dry and aired');
  await technician.page.getByRole('button', { name: 'Lift the hold' }).click();
  await technician.page.getByText('The hold is lifted.').waitFor();
  await expect.poll(() => answers(watcher.page), SOON).not.toContain('Held');
  await technician.page.getByText('Earlier holds (1)').click();
  await technician.page.getByText(/: Spilt at fuelling, dry and aired/).waitFor();
  expect(await watcher.page.evaluate(() => 'stillTheSamePage' in window)).toBe(true);
  for (const each of present) expect(each.complaints).toEqual([]);
});

test('a plan is started, worked, and released; the other board says in work from the first minute to the last', async () => {
  const watcher = await arrive(`/?text=${registration}`, accounts.dispatcher);
  await watcher.page
    .getByRole('link', { name: new RegExp(`^${registration}, `) })
    .first()
    .waitFor();
  const technician = await arrive(`/aircraft/${aircraftId}/job`, accounts.technician);
  const { page } = technician;
  const piece = await add(page, 'Work that opened or touched something');
  await piece.getByLabel('What').fill('Looms behind the panel moved');
  await piece.getByLabel('Behind panel').check();
  await page.getByText(/^Plans kept with this aircraft/).click();
  await page.getByLabel('Keep this plan as').fill('Looms');
  await page.getByRole('button', { name: 'Keep it with the aircraft' }).click();
  await page.getByText('The plan is kept with the aircraft.').waitFor();
  await page.getByRole('button', { name: 'Start work: Looms' }).click();
  await seen(watcher.page, 'In work', 'the work was on the other board');
  await watcher.page.getByText('The aircraft is in work: Looms').first().waitFor();

  await page.getByRole('button', { name: 'Record the work' }).click();
  await page.getByText(/^Recorded: entry number/).waitFor();
  await page.getByRole('button', { name: 'Release', exact: true }).click();
  const open = page.getByText(/no check of supports and controls by two people counts/);
  await open.first().waitFor();
  await signed(page);
  await page.getByRole('button', { name: 'Record the release' }).click();
  await page.getByText('Close what stops the release, or stop the job without a release.').waitFor();

  // The check with two signatures, by another hand meanwhile; what was typed of the release stays.
  const client = new Client(url);
  await client.signIn(accounts.manager, 'wing-and-tally');
  const { aircraft } = await client.data(`{ aircraft(id: "${aircraftId}") { revision dossier } }`);
  const { since } = aircraft.dossier.status.obligations.find(
    (each: { what: string }) => each.what === 'controls-check',
  );
  const later = new Date(Date.parse(`${String(since.at).replace('Z', ':00Z')}`) + 60_000).toISOString().slice(0, 16);
  const check = {
    kind: 'record.add',
    version: 1,
    record: {
      id: 'controls-by-two',
      kind: 'controls-check',
      subjects: ['aircraft'],
      done: { date: since.date, at: `${later}Z` },
      meters: [],
      outcome: 'passed',
      evidence: 'entry-seen',
      entry: { book: 'Airframe log 2', page: '3' },
      agency: { kind: 'mechanic', name: 'Ada Brook', certificate: 'TW-M-1', ratings: ['airframe'] },
      secondPerson: 'Jory Pellam',
    },
  };
  expect((await client.record(aircraftId, aircraft.revision, [check])).errors).toBeUndefined();
  await open.first().waitFor({ state: 'detached' });
  expect(await page.getByLabel('Who approves the return to service').inputValue()).toBe('Ada Brook');

  const at = new Date(Date.parse(`${later}:00Z`) + 60_000).toISOString().slice(0, 16);
  const { zone } = aircraft.dossier.configuration.aircraft.base;
  await page.getByLabel('Released at').fill(localTimeAt(`${at}Z`, zone));
  await page.getByText(/it is not known to hold: .*certificate/).waitFor();
  await page.getByLabel('Certificate number').fill('TW-M-0417');
  await page.getByLabel('I have looked at what stays open').check();
  await page.getByRole('button', { name: 'Record the release' }).click();
  await page.getByText('Looms is released.').waitFor();
  await expect.poll(() => answers(watcher.page), SOON).not.toContain('In work');
  for (const each of present) expect(each.complaints).toEqual([]);
});

test('work that nobody planned is begun from the aircraft by a title, with the keyboard alone, and let go by its release', async () => {
  const watcher = await arrive(`/?text=${registration}`, accounts.dispatcher);
  await watcher.page
    .getByRole('link', { name: new RegExp(`^${registration}, `) })
    .first()
    .waitFor();
  const technician = await arrive(`/aircraft/${aircraftId}`, accounts.technician);
  const { page } = technician;
  await page.getByRole('button', { name: 'Take it into work' }).focus();
  await page.keyboard.press('Enter');
  const title = page.getByLabel('What is to be done');
  const tabTo = async (aim: Locator) => {
    for (let presses = 0; presses < 10; presses += 1) {
      if (await aim.evaluate((each) => each === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error('10 presses of Tab did not lead there');
  };
  await tabTo(title);
  await page.keyboard.type(`${'Annual, right wing '.repeat(11)}`);
  await page.keyboard.press('Enter');
  await page.getByText('The title has 1 to 200 characters. Say in a few words what is to be done.').waitFor();
  expect(await title.inputValue()).toContain('Annual, right wing');
  await title.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('Annual, right wing');
  await tabTo(page.getByRole('button', { name: 'Start work' }));
  await page.keyboard.press('Enter');
  await page.getByText('The aircraft is in work, and held until its release.').waitFor();
  await seen(watcher.page, 'In work', 'the work was on the other board');
  await watcher.page.getByText('The aircraft is in work: Annual, right wing').first().waitFor();
  expect(await watcher.page.getByRole('button', { name: 'Take it into work' }).count()).toBe(0);

  await page.getByRole('link', { name: 'To the work on this aircraft' }).click();
  await page.getByRole('button', { name: 'Release', exact: true }).click();
  await signed(page);
  await page.getByLabel('Certificate number').fill('TW-M-0417');
  await page.getByLabel('I have looked at what stays open').check();
  await page.getByRole('button', { name: 'Record the release' }).click();
  await page.getByText('Annual, right wing is released.').waitFor();
  await expect.poll(() => answers(watcher.page), SOON).not.toContain('In work');
  for (const each of present) expect(each.complaints).toEqual([]);
});
