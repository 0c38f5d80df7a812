import { expect, test } from 'vitest';
import { accounts, visitors } from './browser.js';
import type { Person } from './browser.js';
import { demo } from './demo.js';

/** Of the other house of the demo, which has few aircraft: nobody else's board is judged again. */
const { arrive } = visitors(() => demo.url);
/** The worker has judged the aircraft of the house again, also on a machine that is busy. */
const judged = { timeout: 60_000 };
/** Far above what it takes. */
const soon = { timeout: 15_000 };
const day = (ahead: number): string => new Date(Date.now() + ahead * 86_400_000).toISOString().slice(0, 10);

const sheet = (someone: Person, title: string) => someone.page.getByRole('region', { name: `Set: ${title}` });

async function open(someone: Person, title: string) {
  await someone.page.getByRole('button', { name: `Set: ${title}` }).click();
  return sheet(someone, title);
}

test('a policy is set with its day and reason, replaced before it counts, and stands among who did what', async () => {
  const someone = await arrive('/house', accounts.strangersManager);
  const { page } = someone;
  const form = await open(someone, 'Age of meter readings');
  await form.getByLabel('Days for which a reading counts').fill('0');
  await form.getByLabel('Counts from').fill(day(10));
  await form.getByRole('button', { name: 'Set the policy' }).click();
  await form.getByText('Write whole days, 1 to 366.').waitFor();
  await form.getByLabel('Days for which a reading counts').fill('20');
  await form.getByRole('button', { name: 'Set the policy' }).click();
  // Without a reason it is refused, and what was typed is still there.
  await expect.poll(() => form.getByLabel('Why the house sets it so').getAttribute('aria-invalid'), soon).toBe('true');
  expect(await form.getByLabel('Days for which a reading counts').inputValue()).toBe('20');
  expect(await form.getByLabel('Counts from').inputValue()).toBe(day(10));
  await form.getByLabel('Why the house sets it so').fill('Sheets come in on Mondays');
  await form.getByRole('button', { name: 'Set the policy' }).click();
  await page.getByText('The policy is set; the aircraft are judged again.').waitFor();
  await page.getByText(/: A reading counts for 20 days\./).waitFor();
  await page.getByText('Nothing is set.').first().waitFor();

  const again = await open(someone, 'Age of meter readings');
  await again.getByLabel('Days for which a reading counts').fill('31');
  await again.getByLabel('Counts from').fill(day(10));
  await again.getByLabel('Why the house sets it so').fill('As before after all');
  await again.getByRole('button', { name: 'Set the policy' }).click();
  await page.getByText(/: A reading counts for 31 days\./).waitFor();
  await page.getByText('Earlier versions (1)').click();
  await page.getByText(/^A reading counts for 20 days, .*Sheets come in on Mondays/).waitFor();

  await page.goto(`${demo.url}/audit?topic=HOUSE`);
  const rows = page.getByRole('row', { name: /Set the policy Age of meter readings/ });
  await expect.poll(() => rows.count(), soon).toBe(2);
  expect(await rows.first().textContent()).toMatch(/Odile Cray.*As before after all/);
  expect(someone.complaints).toEqual([]);
});

test('a source that the house doubts wants the say-so of a named person; given it is a yes, taken back it is none', async () => {
  const someone = await arrive('/house', accounts.strangersManager);
  const { page } = someone;
  const doubt = await open(someone, 'Sources that want a say-so');
  await doubt.getByLabel('From memory').check();
  await doubt.getByLabel('Why the house sets it so').fill('Not read in any text');
  await doubt.getByRole('button', { name: 'Set the policy' }).click();
  await page.getByText('The policy is set; the aircraft are judged again.').waitFor();

  await page.goto(`${demo.url}/aircraft/tw-61c`);
  const panel = page.getByRole('region', { name: 'Say-so for doubted sources' });
  await panel.waitFor(judged);
  const flight = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: /^VFR rental into class B/ }) });
  await expect.poll(() => flight.textContent(), judged).toContain('Wants a say-so');
  const dispatcher = await arrive('/aircraft/tw-61c', accounts.stranger);
  await dispatcher.page.getByText('The house’s policy names other roles to give it.').waitFor();
  expect(await dispatcher.page.getByRole('button', { name: 'Say so' }).count()).toBe(0);

  // Without grounds, and for a time that is over, it is refused; what was typed stays.
  await panel.getByRole('button', { name: 'Say so' }).click();
  await panel.getByText('A reason has 1 to 500 characters. Say in a few words why.').waitFor();
  const until = panel.getByLabel(/^Until/);
  const endOfDay = await until.inputValue();
  await panel.getByLabel('On what grounds').fill('Read the bulletin by telephone');
  await until.fill('2020-01-01T10:00');
  await panel.getByRole('button', { name: 'Say so' }).click();
  await expect.poll(() => until.getAttribute('aria-invalid'), soon).toBe('true');
  expect(await panel.getByLabel('On what grounds').inputValue()).toBe('Read the bulletin by telephone');
  await until.fill(endOfDay);
  await panel.getByRole('button', { name: 'Say so' }).click();
  const given = panel.getByText(/^Odile Cray answers for .* until .*: Read the bulletin by telephone/);
  await given.first().waitFor();
  await expect.poll(() => flight.textContent(), judged).toMatch(/Yes/);
  expect(await someone.faults()).toEqual([]);

  // One after the other, until it is the one that this flight rests on; what is taken back, and no more, is asked for again.
  const answered = await given.count();
  const taking = panel.locator('form').filter({ has: page.getByLabel('Why', { exact: true }) });
  for (let left = answered - 1; !/Wants a say-so/.test((await flight.textContent()) ?? ''); left -= 1) {
    await panel.getByRole('button', { name: 'Take it back' }).first().click();
    if (left === answered - 1) {
      await taking.getByRole('button', { name: 'Take it back' }).click();
      await taking.getByText('A reason has 1 to 500 characters.').waitFor();
    }
    await taking.getByLabel('Why', { exact: true }).fill('It was another bulletin');
    await taking.getByRole('button', { name: 'Take it back' }).click();
    await expect.poll(() => given.count(), soon).toBe(left);
    const asked = panel.getByRole('group', { name: 'I answer for' }).getByRole('checkbox');
    expect(await asked.count()).toBe(answered - left);
  }

  await page.goto(`${demo.url}/house`);
  const over = await open(someone, 'Sources that want a say-so');
  await over.getByLabel('From memory').uncheck();
  await over.getByLabel('Why the house sets it so').fill('The text is here');
  await over.getByRole('button', { name: 'Set the policy' }).click();
  await page.getByText('None wants a say-so').waitFor();
  await page.goto(`${demo.url}/aircraft/tw-61c`);
  await expect.poll(() => flight.textContent(), judged).toMatch(/Yes/);
  // What is still given stands there until it is over; nothing more is asked for.
  expect(await panel.getByRole('group', { name: 'I answer for' }).count()).toBe(0);
  expect([...someone.complaints, ...dispatcher.complaints]).toEqual([]);
});
