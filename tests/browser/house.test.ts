import { describe, expect, it } from 'vitest';
import { accounts, add, visitors } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { come: person } = visitors(() => url);

/** A day so many days ago, as a date field takes it. */
const daysAgo = (days: number): string => new Date(Date.now() - days * 86_400_000).toISOString().slice(0, 10);

describe('the house', () => {
  it.each([
    ['wide', { width: 1440 }],
    ['on a phone', { width: 360 }],
    ['in the dark', { width: 1440, dark: true }],
  ] as const)('people, sessions, house and test sets: nothing for axe, no sideways scrolling, %s', async (_, look) => {
    const someone = await person(look);
    await someone.enter(url, accounts.manager);
    const { page } = someone;
    const screens = [
      ['/people', 'People', 'Add a person'],
      ['/people?person=new', 'People', 'Add this person'],
      ['/sessions', 'Where you are signed in', null],
      ['/house', 'Wendle Avionics', 'Add a flight profile'],
      ['/audit', 'Who did what', null],
      ['/workshop?set=new', 'Test sets and agencies', 'Save the test set'],
      ['/workshop?agency=new', 'Test sets and agencies', 'Save the agency'],
    ] as const;
    for (const [path, heading, button] of screens) {
      await page.goto(`${url}${path}`);
      await page.getByRole('heading', { name: heading, level: 1 }).waitFor();
      if (button !== null) await page.getByRole('button', { name: button, exact: true }).waitFor();
      await someone.settled();
      expect(await someone.faults(), path).toEqual([]);
    }
    expect(someone.complaints).toEqual([]);
  });

  it("tells a manager who did what, by person, kind and day, and changes one's own password", async () => {
    const manager = await person();
    const { page } = manager;
    await page.goto(url);
    await page.getByLabel('E-mail').fill(accounts.manager);
    await page.getByLabel('Password').fill('not my password');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('alert').first().waitFor();
    await manager.signIn(`${url}/audit`, accounts.manager);
    await page.getByRole('heading', { name: 'Who did what', level: 1 }).waitFor();
    await page
      .getByRole('row', { name: /A sign-in failed/ })
      .first()
      .waitFor();
    await page.getByLabel('Kind').selectOption({ label: 'People' });
    await page.getByRole('row', { name: /A sign-in failed/ }).waitFor({ state: 'detached' });
    await page.getByLabel('Kind').selectOption({ label: 'Signing in and out' });
    await page
      .getByRole('row', { name: /Signed in/ })
      .first()
      .waitFor();
    await page.getByLabel('Day').fill('2020-01-01');
    await page.getByText('No entry answers this.').waitFor();
    expect(new URL(page.url()).searchParams.get('day')).toBe('2020-01-01');

    await page.goto(`${url}/sessions`);
    await page.getByLabel('Password now').fill('not this one');
    await page.getByLabel('New password').fill('wing-and-tally');
    await page.getByRole('button', { name: 'Change my password' }).click();
    await page.getByText('This is not your password. Type the one you signed in with.').waitFor();
    expect(await page.getByLabel('New password').inputValue()).toBe('wing-and-tally');
    // The same one again, so that whoever comes after still knows it.
    await page.getByLabel('Password now').fill('wing-and-tally');
    await page.getByRole('button', { name: 'Change my password' }).click();
    await page.getByText('Your password is changed').waitFor();
  });

  it('lets a manager add somebody, change the role and shut them out again', async () => {
    const manager = await person();
    await manager.enter(`${url}/people`, accounts.manager);
    const { page } = manager;
    await page.getByRole('button', { name: 'Add a person' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Runa Teale');
    await page.getByLabel('E-mail').fill('runa@wendle.example');
    await page.getByLabel('First password').fill('short');
    await page.getByRole('button', { name: 'Add this person' }).click();
    await page.getByText('The password has fewer than 10 characters. Choose a longer one.').waitFor();
    // What was typed is still there.
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('Runa Teale');
    await page.getByLabel('First password').fill('heron-on-the-mast');
    await page.getByRole('button', { name: 'Add this person' }).click();
    await page.getByText('Runa Teale is added.').waitFor();

    const runa = await person();
    await runa.signIn(url, 'runa@wendle.example', 'heron-on-the-mast');
    await page.reload();
    await page.getByRole('button', { name: 'Change Runa Teale' }).click();
    await page.getByLabel('Role', { exact: true }).selectOption('AUDITOR');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('Runa Teale is saved.').waitFor();
    await runa.page.goto(`${url}/people`);
    await runa.page.getByRole('heading', { name: 'People', level: 1 }).waitFor();
    expect(await runa.page.getByRole('button', { name: /^Change / }).count()).toBe(0);

    await page.getByRole('button', { name: 'Change Runa Teale' }).click();
    await page.getByRole('button', { name: 'Deactivate' }).click();
    await page.getByText('Runa Teale can no longer sign in.').waitFor();
    await runa.page.goto(url);
    await runa.page.getByLabel('Password').waitFor();

    await page.goto(`${url}/house`);
    const entries = page.getByRole('region', { name: 'Table: What was changed, by whom' });
    await entries.getByText('Deactivated Runa Teale').waitFor();
    await entries.getByText('Technician, now Auditor').waitFor();
    expect(await entries.textContent()).not.toContain('heron-on-the-mast');
  });

  it('keeps one manager from overwriting another, and loads what is stored', async () => {
    const [one, two] = [await person(), await person()];
    for (const each of [one, two]) {
      await each.enter(`${url}/house`, accounts.manager);
      await each.page.getByRole('button', { name: 'Rename Coldbrook Flying Club' }).click();
    }
    await one.page.getByLabel('Name of the operator').fill('Coldbrook Flyers');
    await one.page.getByRole('button', { name: 'Save the operator' }).click();
    await one.page.getByText('The operator Coldbrook Flyers is saved.').waitFor();
    await two.page.getByLabel('Name of the operator').fill('Coldbrook Aero Club');
    await two.page.getByRole('button', { name: 'Save the operator' }).click();
    await two.page.getByText(/was changed by Maud Wendle meanwhile/).waitFor();
    expect(await two.page.getByLabel('Name of the operator').inputValue()).toBe('Coldbrook Aero Club');
    await two.page.getByRole('button', { name: 'Load it again' }).click();
    await two.page.getByRole('button', { name: 'Rename Coldbrook Flyers' }).waitFor();
    await one.page.getByRole('button', { name: 'Rename Coldbrook Flyers' }).click();
    await one.page.getByLabel('Name of the operator').fill('Coldbrook Flying Club');
    await one.page.getByRole('button', { name: 'Save the operator' }).click();
    await one.page.getByText('The operator Coldbrook Flying Club is saved.').waitFor();
  });

  it('finds the entries that lean on a test set, from the job screen to the trace', async () => {
    const manager = await person();
    await manager.enter(`${url}/workshop?set=new`, accounts.manager);
    const { page } = manager;
    await page.getByLabel('What it is').fill('Ramp tester');
    await page.getByLabel('Serial number').fill('TS-8812');
    await page.getByRole('button', { name: 'Save the test set' }).click();
    await page.getByRole('button', { name: 'Open the checks of TS-8812' }).click();
    await page.getByLabel('Checked on').fill(daysAgo(200));
    await page.getByLabel('Good until').fill(daysAgo(-160));
    await page.getByRole('button', { name: 'Enter the check' }).click();
    await page.getByText('The check of TS-8812 is entered.').waitFor();

    await page.goto(`${url}/aircraft/tw-01q/job`);
    const step = await add(page, 'Record a test or an entry');
    await step.getByLabel('Kind').selectOption('transponder-test');
    await step.getByLabel('The aircraft', { exact: true }).check();
    const more = step.getByRole('button', { name: 'More fields' });
    if (await more.isVisible()) await more.click();
    await step.getByLabel('Fill in from the house’s test sets').selectOption({ index: 1 });
    expect(await step.getByLabel('Serial', { exact: true }).inputValue()).toBe('TS-8812');
    await page.getByRole('button', { name: 'Record the work' }).click();
    await page
      .getByText(/recorded/i)
      .first()
      .waitFor();

    await page.goto(`${url}/workshop`);
    await page.getByRole('button', { name: 'Open the checks of TS-8812' }).click();
    await page.getByLabel('Checked on').fill(daysAgo(0));
    await page.getByLabel('Found, before any adjustment').selectOption('OUT_OF_TOLERANCE');
    await page.getByRole('button', { name: 'Enter the check' }).click();
    await page.getByRole('button', { name: /^Which entries lean on it/ }).click();
    const trace = page.getByRole('region', { name: /^Table: Entries that lean on Ramp tester/ });
    await trace.getByRole('link', { name: 'TW-01Q' }).waitFor();
    expect(await trace.getByRole('row').count()).toBe(2);
    await page.setViewportSize({ width: 360, height: 780 });
    expect(await manager.faults()).toEqual([]);
  });
});
