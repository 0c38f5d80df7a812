import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { accounts, visitors } from './browser.js';
import type { Person } from './browser.js';
import { demo } from './demo.js';

const { url } = demo;
const { come } = visitors(() => url);

/** Every address of the application, taken from its own list of screens. */
const screens = [
  '/',
  ...[
    ...readFileSync(new URL('../../apps/web/src/app/router.tsx', import.meta.url), 'utf8').matchAll(
      /path: '([a-z][a-z/:-]*)'/g,
    ),
  ].map((found) => `/${found[1]}`),
];

/** A manager whose page notes everything that the policy stops, from the first line it loads. */
async function watched(): Promise<{ readonly person: Person; readonly stopped: () => Promise<string[]> }> {
  const someone = await come();
  const { page } = someone;
  await page.addInitScript(() => {
    const found: string[] = [];
    Object.assign(globalThis, { stoppedByPolicy: found });
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sourceFile }) => {
      found.push(`${effectiveDirective} ${blockedURI} in ${sourceFile}`);
    });
  });
  await someone.enter(url, accounts.manager);
  const stopped = () =>
    page.evaluate(() => (globalThis as unknown as { stoppedByPolicy: string[] }).stoppedByPolicy.splice(0));
  return { person: someone, stopped };
}

describe('the content security policy', () => {
  it('stops nothing of ours on any screen', async () => {
    const { person, stopped } = await watched();
    const { page } = person;
    const ids = await page.evaluate(async () => {
      const response = await fetch('/graphql', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({
          query: `{ readyBoard(first: 1) { edges { node { aircraft { id } } } } catalogue(first: 1) { edges { node { id } } }
            ruleBook { id } }`,
        }),
      });
      const { data } = (await response.json()) as {
        data: {
          readyBoard: { edges: { node: { aircraft: { id: string } } }[] };
          catalogue: { edges: { node: { id: string } }[] };
          ruleBook: { id: string }[];
        };
      };
      return {
        aircraft: data.readyBoard.edges[0]?.node.aircraft.id ?? '',
        catalogue: data.catalogue.edges[0]?.node.id ?? '',
        rules: data.ruleBook[0]?.id ?? '',
      };
    });
    expect(screens.length).toBeGreaterThan(15);
    for (const screen of screens) {
      const [, first = ''] = screen.split('/');
      const path = screen.replace(':id', encodeURIComponent(ids[first as keyof typeof ids] ?? 'none'));
      await page.goto(url + path);
      await person.settled();
      await page.waitForLoadState('networkidle');
      expect({ path, stopped: await stopped(), complaints: person.complaints.splice(0) }).toEqual({
        path,
        stopped: [],
        complaints: [],
      });
    }
  });

  it('stops a script that somebody got into the page, and one from elsewhere', async () => {
    const { person, stopped } = await watched();
    const ran = await person.page.evaluate(async () => {
      const inline = document.createElement('script');
      inline.textContent = 'globalThis.gotIn = true';
      const elsewhere = document.createElement('script');
      elsewhere.src = 'http://127.0.0.1:9/elsewhere.js';
      document.body.append(inline, elsewhere);
      const holder = document.createElement('div');
      holder.innerHTML = '<img src="/none.png" onerror="globalThis.gotIn = true"><style>body { display: none }</style>';
      document.body.append(holder);
      await new Promise((done) => setTimeout(done, 500));
      return [(globalThis as { gotIn?: boolean }).gotIn ?? false, getComputedStyle(document.body).display];
    });
    expect(ran).toEqual([false, 'block']);
    const directives = (await stopped()).map((line) => line.split(' ')[0]);
    expect(new Set(directives)).toEqual(new Set(['script-src-elem', 'script-src-attr', 'style-src-elem']));
  });
});
