import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Client as Owner } from 'pg';
import { asOwner } from '../api/owner.js';
import { accounts, visitors } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { arrive } = visitors(() => url);
let owner: Owner;
let ours = '';

/** One aircraft as a newer version of the rules left it: this version's worker leaves it alone, so it stays so. */
beforeAll(async () => {
  owner = await asOwner(demo);
  const { rows } = await owner.query<{ rules_version: string }>(
    `select rules_version from aircraft where organisation_id = 'wendle' and id = 'tw-01q'`,
  );
  ours = rows[0]?.rules_version ?? '';
  await judgedBy('9999.1');
});
afterAll(async () => {
  await judgedBy(ours);
  await owner.end();
});

async function judgedBy(version: string): Promise<void> {
  await owner.query(`update aircraft set rules_version = $1 where organisation_id = 'wendle' and id = 'tw-01q'`, [
    version,
  ]);
}

test.each([
  ['wide', {}],
  ['on a phone, dark', { width: 360, dark: true }],
] as const)('every screen says that aircraft are judged again and how far that is, %s', async (_name, look) => {
  try {
    const someone = await arrive('/', accounts.auditor, look);
    const { page } = someone;
    const strip = page.locator('.tw-quiet-strip');
    await strip.getByRole('status').filter({ hasText: 'Being judged again' }).waitFor();
    const said = (await strip.textContent()) ?? '';
    const [, done, all] = /(\d+) of (\d+) aircraft done/.exec(said) ?? [];
    expect(Number(all)).toBeGreaterThan(20);
    expect(Number(done)).toBe(Number(all) - 1);
    const cells = page.getByRole('link', { name: /^TW-01Q, / });
    await cells.first().waitFor();
    const answers = await cells.allTextContents();
    expect(answers.length).toBeGreaterThan(5);
    for (const answer of answers) expect(answer).toContain('Being judged again');
    expect(await someone.faults()).toEqual([]);
    await page.goto(`${url}/findings`);
    await strip.getByText(`${done} of ${all} aircraft done`).waitFor();
    await judgedBy(ours);
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(() => strip.textContent(), { timeout: 15_000 }).toBe('');
    expect(someone.complaints).toEqual([]);
  } finally {
    await judgedBy('9999.1');
  }
});
