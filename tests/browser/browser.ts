import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { BrowserContext, Page } from 'playwright-core';

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A browser with nothing kept from before: its own cookies, storage and cache. */
export class Person {
  private constructor(
    readonly page: Page,
    private readonly context: BrowserContext,
    private readonly folder: string,
  ) {}

  static async arrive(look: { readonly width?: number; readonly dark?: boolean } = {}): Promise<Person> {
    const folder = await mkdtemp(join(tmpdir(), 'tallywing-browser-'));
    const context = await chromium.launchPersistentContext(folder, {
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      headless: true,
      args: flags,
      viewport: { width: look.width ?? 1440, height: 900 },
      colorScheme: look.dark ? 'dark' : 'light',
      bypassCSP: true,
    });
    return new Person(context.pages()[0] ?? (await context.newPage()), context, folder);
  }

  /** Signs in on the screen, as people do, and waits until the address they wanted is shown. */
  async signIn(url: string, email: string, password = 'wing-and-tally'): Promise<void> {
    await this.page.goto(url);
    await this.page.getByLabel('E-mail').fill(email);
    await this.page.getByLabel('Password').fill(password);
    await this.page.getByRole('button', { name: 'Sign in' }).click();
    await this.page.getByLabel('E-mail').waitFor({ state: 'detached' });
  }

  /** What axe finds wrong with the page as it stands, by rule and place. */
  async faults(): Promise<readonly string[]> {
    await this.page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
    const found = await this.page.evaluate(async () => {
      const { axe } = globalThis as unknown as {
        axe: { run(): Promise<{ violations: { id: string; nodes: { target: string[] }[] }[] }> };
      };
      return (await axe.run()).violations.flatMap((each) =>
        each.nodes.map((node) => `${each.id}: ${node.target.join(' ')}`),
      );
    });
    return found;
  }

  async leave(): Promise<void> {
    await this.context.close();
    await rm(this.folder, { recursive: true, force: true });
  }
}
