import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { accounts, add, choose, visitors, work } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive } = visitors(() => url);
const trainer = 'TW-01Q';
const lpvLesson = 'IFR lesson, provided aircraft, controlled airspace, to 9,000 ft, LPV or ILS';
const granted = ['Nav GNSS', 'Approach LNAV', 'Approach LP', 'Approach LNAV VNAV', 'Approach LPV'];

/** A repair station with every rating that the work asks. */
async function signedBy(entry: Locator): Promise<void> {
  const signed = entry.getByRole('group', { name: 'Who signed' });
  await signed.getByLabel('Recorded').first().check();
  await choose(signed.getByLabel('Kind', { exact: true }), 'Repair station');
  await signed.getByLabel('Name').fill('Wendle Avionics');
  await signed.getByLabel(/^Certificate/).fill('WAV-118');
  await signed.getByRole('group', { name: 'Ratings' }).getByLabel('Not recorded').uncheck();
  for (const each of ['Radio 1', 'Radio 2', 'Radio 3', 'Station airframe'])
    await signed.getByLabel(each, { exact: true }).check();
}

test('a trainer gets a navigator with vertical guidance, and the dispatcher may send it IFR', async () => {
  const dispatcher = await arrive('/', accounts.dispatcher);
  expect(await dispatcher.answer(trainer, lpvLesson)).toBe('No');

  const technician = await arrive('/', accounts.technician);
  const { page } = technician;
  await page.getByRole('link', { name: trainer, exact: true }).click();
  await page.getByRole('link', { name: 'Plan or record work' }).click();

  // Out with the navigator that is limited to VFR, and with its placard.
  const out = await add(page, 'Take a unit out');
  await choose(out.getByLabel('Unit', { exact: true }), 'QN 20V');
  await out.getByLabel('Reason').fill('Replaced by a navigator with vertical guidance');
  const placard = await add(page, 'Take a placard off');
  await choose(placard.getByLabel('Placard'), 'VFR');
  await placard.getByLabel('Reason').fill('The unit it speaks of is out');

  // In with the other one on a circuit of its own, and what it is approved for here.
  const fit = await add(page, 'Fit a unit');
  await fit.getByRole('combobox', { name: /Equipment type/ }).fill('QN 52');
  await page
    .getByRole('option', { name: /QN 52 / })
    .first()
    .click();
  await fit.getByLabel(/^Serial/).fill('QN52-0107');
  await choose(fit.getByLabel(/^Place/), 'Centre stack');
  await choose(fit.getByLabel(/^Opening in the panel/), 'stack');
  await fit.getByLabel(/^From the centre of view/).fill('6');
  await fit.getByLabel(/^Software/).fill('3.1');
  await fit
    .getByRole('group', { name: 'The work opened or touched' })
    .getByLabel('Electrical', { exact: true })
    .check();
  const approval = fit.getByRole('group', { name: 'Approval of this installation' });
  await approval.getByLabel('Recorded').first().check();
  await choose(approval.getByLabel('Kind of approval'), 'STC model list');
  await approval.getByLabel('Title').fill('Approved model list for the QN 52');
  await approval.getByLabel(/^Revision/).fill('4');
  await approval.getByLabel(/^Data approved on/).fill('2025-02-10');
  await approval.getByLabel(/^Work released on/).fill(await out.getByLabel('Date', { exact: true }).inputValue());
  await choose(approval.getByLabel(/^Written permission/), 'Yes');
  await choose(approval.getByLabel(/^Exact model/), 'Yes');
  await approval.getByRole('group', { name: 'Approved for' }).getByLabel('Not recorded').uncheck();
  for (const each of granted) await approval.getByLabel(each, { exact: true }).check();

  // Its ports are offered with a partner each.
  await page.getByRole('button', { name: /^Join all \d pairs/ }).click();

  const antenna = await add(page, 'Fit an antenna');
  await choose(antenna.getByLabel('Kind'), 'GNSS SBAS');
  await antenna.getByLabel(/QN 52 navigator/).check();
  await choose(antenna.getByLabel(/^Approved/), 'Yes');

  const supplement = await add(page, 'Flight manual supplement');
  await supplement.getByLabel(/QN 52 navigator/).check();
  await supplement.getByLabel('Title').fill('Supplement for the QN 52');
  await choose(supplement.getByLabel(/^Aboard/), 'Yes');
  await choose(supplement.getByLabel(/^It asks for current/), 'Yes');
  await supplement.getByRole('group', { name: 'Approved for' }).getByLabel('Not recorded').uncheck();
  for (const each of granted) await supplement.getByLabel(each, { exact: true }).check();

  const load = await add(page, 'Load a database');
  await choose(load.getByLabel('Unit', { exact: true }), 'QN 52');
  expect(await load.getByLabel(/^Cycle number/).inputValue()).toMatch(/^\d{4}$/);

  // Nobody has looked up the directives of a unit that was not there: until then nobody can tell whether it may fly.
  const looked = await add(page, 'State that a list is complete');
  await choose(looked.getByLabel('List', { exact: true }), 'Directives');

  // The new antenna's bond is measured: out of its limit it is said so at once, mended it is in.
  const bond = await add(page, 'Record a test or an entry');
  await choose(bond.getByLabel('Kind', { exact: true }).first(), 'Bonding check');
  await bond.getByLabel('The aircraft', { exact: true }).check();
  await choose(bond.getByLabel(/^Outcome/), 'Passed');
  await signedBy(bond);
  await bond.getByRole('button', { name: 'Add a row' }).click();
  await choose(bond.getByRole('list').getByLabel('Kind', { exact: true }), 'Equipment frame');
  await bond
    .getByLabel(/^Place/)
    .last()
    .fill('GNSS antenna base to skin');
  await bond.getByLabel(/^Milliohm/).fill('3.1');
  await bond.getByText('Readings together: Out of tolerance').waitFor();
  await bond.getByLabel(/^Milliohm/).fill('1.8');
  await bond.getByText('Readings together: In tolerance').waitFor();

  // What the work calls for is listed; each entry is made from there, the ones that are read with their readings.
  const read: string[] = [];
  const owed = page.locator('.tw-owed').getByRole('button', { name: 'Record it' });
  // The plan is judged a moment after the last stroke: until then the panel says that it is not done.
  const effect = page.getByRole('region', { name: 'What this does' });
  const judged = page.locator('.tw-effect[aria-busy="false"]');
  const atRest = async () => {
    await judged.waitFor();
    return await owed.count();
  };
  for (let guard = 0; (await atRest()) > 0; guard += 1) {
    expect(guard).toBeLessThan(20);
    const before = await page.locator('.tw-step').count();
    const left = await owed.count();
    await owed.first().click();
    const entry = work(page, before + 1);
    await entry.waitFor();
    const kind = await entry.getByLabel('Kind', { exact: true }).first().inputValue();
    await choose(entry.getByLabel(/^Outcome/), kind === 'release-entry' ? 'Approved' : 'Passed');
    await signedBy(entry);
    if (kind === 'compass-swing') {
      const shown = entry.getByLabel(/^Compass shows/);
      for (let at = 0; at < (await shown.count()); at += 1) await shown.nth(at).fill(String(at * 30 + 3));
      await choose(entry.getByLabel(/^Engines running/), 'Yes');
      await choose(entry.getByLabel(/^Radios stated/), 'Yes');
      await entry.getByText('Readings together: In tolerance').waitFor();
      read.push(kind);
    }
    if (kind === 'vhf-interference-check') {
      const lost = entry.getByLabel(/^Navigation was lost/);
      expect(await lost.count()).toBeGreaterThanOrEqual(6);
      for (let at = 0; at < (await lost.count()); at += 1) await choose(lost.nth(at), 'No');
      await entry.getByText('Readings together: In tolerance').waitFor();
      read.push(kind);
    }
    await entry.getByRole('button', { name: 'More fields' }).click();
    await entry.getByLabel(/^Second signature/).fill('A. Secundus');
    await expect.poll(() => owed.count(), { timeout: 20_000 }).toBeLessThan(left);
  }

  // One for the unit that went and one for the unit that came.
  expect(read.sort()).toEqual(['compass-swing', 'vhf-interference-check', 'vhf-interference-check']);

  // Judged here before anything is recorded, by the rules that the server will use.
  await expect.poll(() => effect.innerText(), { timeout: 20_000 }).toContain(lpvLesson);
  expect(await effect.locator('.tw-effect-profiles > li', { hasText: lpvLesson }).textContent()).toMatch(
    /becomes\s*Yes/,
  );

  await page.getByRole('button', { name: 'Record the work' }).click();
  await page.getByText(/^Recorded: entry numbers/).waitFor();

  // The board in the other browser follows by itself.
  await expect.poll(() => dispatcher.answer(trainer, lpvLesson), { timeout: 20_000 }).toBe('Yes');
  expect([...technician.complaints, ...dispatcher.complaints]).toEqual([]);
});

test('for a dispatcher of another organisation the aircraft does not exist', async () => {
  const stranger = await arrive('/aircraft/tw-01q', accounts.stranger);
  await stranger.page.getByText('There is no such aircraft here.').waitFor();
  await stranger.page.goto(url);
  await stranger.page.getByRole('table', { name: 'Aircraft by flight profile' }).waitFor();
  expect(await stranger.page.getByText(trainer).count()).toBe(0);
});
