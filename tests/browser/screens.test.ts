import { describe, expect, it } from 'vitest';
import { visitors } from './browser.js';
import type { Person } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { come: person } = visitors(() => url);

/** Answers a GraphQL question with the cookies of the page. */
async function ask<T>(someone: Person, query: string, variables: Record<string, unknown> = {}): Promise<T> {
  return await someone.page.evaluate(
    async ([text, values]) => {
      const response = await fetch('/graphql', {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'apollo-require-preflight': 'yes' },
        body: JSON.stringify({ query: text, variables: values }),
      });
      const { data, errors } = (await response.json()) as { data: unknown; errors?: { message: string }[] };
      if (errors) throw new Error(errors.map((each) => each.message).join('; '));
      return data as never;
    },
    [query, variables] as const,
  );
}

const oneAircraft = async (someone: Person) => {
  const { profiles } = await ask<{ profiles: { id: string }[] }>(someone, '{ profiles { id } }');
  const { readyBoard } = await ask<{
    readyBoard: { edges: { node: { aircraft: { id: string; registration: string } } }[] };
  }>(
    someone,
    'query ($profile: ID!) { readyBoard(profile: $profile, first: 1) { edges { node { aircraft { id registration } } } } }',
    { profile: profiles[0]?.id },
  );
  const found = readyBoard.edges[0]?.node.aircraft;
  if (!found) throw new Error('the board is empty');
  return found;
};

describe('screens', () => {
  it('come packed to whoever can unpack them, and as they are to others; until they are here the page says so', async () => {
    const first = await (await fetch(url)).text();
    expect(first).toContain('Loading Tallywing');
    const script = /\/assets\/index-[\w-]+\.js/.exec(first)?.[0] ?? '';
    const [whole, packed] = await Promise.all(
      ['identity', 'gzip'].map((encoding) => fetch(url + script, { headers: { 'accept-encoding': encoding } })),
    );
    for (const answer of [whole, packed]) {
      expect(answer?.headers.get('content-type')).toMatch(/^text\/javascript/);
      expect(answer?.headers.get('cache-control')).toContain('immutable');
      expect(answer?.headers.get('vary')).toContain('Accept-Encoding');
    }
    expect(whole?.headers.get('content-encoding')).toBeNull();
    expect(packed?.headers.get('content-encoding')).toBe('gzip');
    const length = (answer: Response | undefined) => Number(answer?.headers.get('content-length'));
    expect(length(packed)).toBeGreaterThan(0);
    expect(length(packed)).toBeLessThan(length(whole) / 2);
    expect(await packed?.text()).toBe(await whole?.text());
  });

  it('says what is wrong with a password and lets nobody in', async () => {
    const { page } = await person();
    await page.goto(url);
    await page.getByLabel('E-mail').fill('technician@wendle.example');
    await page.getByLabel('Password').fill('not the password');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('alert').first().waitFor();
    expect(await page.getByLabel('E-mail').inputValue()).toBe('technician@wendle.example');
  });

  it.each([
    ['wide', { width: 1440 }],
    ['on a phone', { width: 360 }],
    ['in the dark', { width: 1440, dark: true }],
  ] as const)(
    'ready board, aircraft and job: nothing for axe to find, no sideways scrolling, %s',
    async (_name, look) => {
      const someone = await person(look);
      await someone.enter(url, 'technician@wendle.example');
      const { id, registration } = await oneAircraft(someone);
      for (const path of ['/', `/aircraft/${id}`, `/aircraft/${id}/job`]) {
        await someone.page.goto(`${url}${path}`);
        await someone.page.getByText(registration).first().waitFor();
        await someone.settled();
        expect(await someone.faults(), path).toEqual([]);
      }
    },
  );

  it.each(['/', '/findings', '/due'])(
    'printed, %s names its columns on each sheet: no button stands for a name, and the head is lower than a quarter of the sheet',
    async (path) => {
      const someone = await person();
      const { page } = someone;
      await someone.enter(url + path, 'manager@wendle.example');
      const head = page.locator('.tw-table thead:visible').first();
      await head.waitFor();
      await someone.settled();
      // A4 on its long side, less 12 mm on each.
      const sheet = { width: 1032, height: 703 };
      await page.setViewportSize(sheet);
      await page.emulateMedia({ media: 'print' });
      const found = await page.locator('.tw-table thead').evaluateAll((heads) =>
        heads.map((each) => ({
          height: each.getBoundingClientRect().height,
          names: each.textContent,
          boxes: [...each.querySelectorAll('button')].map((button) => getComputedStyle(button).display),
          stuck: [...each.querySelectorAll('th')].map((cell) => getComputedStyle(cell).position),
        })),
      );
      // No button is printed that would tell of more.
      const rest = page.getByText(/^Printed are \d+ of \d+: show more/);
      expect(await rest.isVisible()).toBe(path === '/findings');
      expect(found.length).toBeGreaterThan(0);
      for (const { height, names, boxes, stuck } of found) {
        expect(names).toMatch(/\w/);
        expect(height).toBeLessThan(sheet.height / 4);
        expect(new Set(boxes)).toEqual(new Set(boxes.length > 0 ? ['contents'] : []));
        expect(new Set(stuck)).toEqual(new Set(['static']));
      }
    },
  );

  it.each([
    ['wide', { width: 1440 }],
    ['on a phone, in the dark', { width: 360, dark: true }],
  ] as const)('a rule, from the book to an aircraft that it bites, %s', async (_name, look) => {
    const someone = await person(look);
    const { page } = someone;
    await someone.enter(`${url}/rules`, 'auditor@wendle.example');
    await page.getByRole('link', { name: 'Transponder test', exact: true }).click();
    await page.getByRole('heading', { name: 'Transponder test', level: 1 }).waitFor();
    const cases = page.getByRole('table', { name: 'Worked cases' });
    await cases.getByText('Not met').first().waitFor();
    await cases.getByText('Cannot tell').first().waitFor();
    await someone.settled();
    expect(await someone.faults()).toEqual([]);
    const bitten = page.getByRole('table', { name: 'Open findings of this rule' }).getByRole('link').first();
    const registration = await bitten.textContent();
    await bitten.click();
    await page.getByRole('heading', { name: new RegExp(`^${registration} `), level: 1 }).waitFor();
    await page.goto(`${url}/rules/no-such-rule`);
    await page.getByText('There is no such rule in force.').waitFor();
    expect(someone.complaints).toEqual([]);
  });

  it('shows an aircraft to its own house only', async () => {
    const ours = await person();
    await ours.enter(url, 'technician@wendle.example');
    const { id, registration } = await oneAircraft(ours);
    const theirs = await person();
    await theirs.enter(url, 'dispatcher@nethercray.example');
    expect(await ask(theirs, 'query ($id: ID!) { aircraft(id: $id) { registration } }', { id })).toEqual({
      aircraft: null,
    });
    await theirs.page.goto(`${url}/aircraft/${id}`);
    await theirs.page.getByText('There is no such aircraft here.').waitFor();
    expect(await theirs.page.getByText(registration).count()).toBe(0);
  });
});
