import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { setTimeout } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, afterEach } from 'vitest';

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Milliseconds that the browser is given to let somebody go; the slowest of 500 took 230. */
const LET_GO = 10_000;

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The demo's accounts; all have the password that the start prints. */
export const accounts = {
  manager: 'manager@wendle.example',
  technician: 'technician@wendle.example',
  dispatcher: 'dispatcher@wendle.example',
  auditor: 'auditor@wendle.example',
  stranger: 'dispatcher@nethercray.example',
  strangersManager: 'manager@nethercray.example',
} as const;

export interface Look {
  readonly width?: number;
  readonly dark?: boolean;
}

/** One browser a file; everybody has cookies, storage and cache of their own in it. */
let browser: Promise<Browser> | null = null;
afterAll(quit);

/** Closes the browser; who arrives next gets another. */
async function quit(): Promise<void> {
  const closing = browser;
  browser = null;
  await (await closing)?.close();
}

/** Somebody at a device with nothing kept from before. */
export class Person {
  /** What the page itself complained of: errors thrown, and anything the content security policy stopped. */
  readonly complaints: string[] = [];

  private constructor(
    readonly page: Page,
    private readonly context: BrowserContext,
  ) {
    page.setDefaultTimeout(30_000);
    page.on('pageerror', (error) => this.complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') this.complaints.push(message.text());
    });
  }

  static async arrive(look: Look = {}): Promise<Person> {
    browser ??= chromium.launch({
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      headless: true,
      args: flags,
    });
    const context = await (
      await browser
    ).newContext({
      viewport: { width: look.width ?? 1440, height: 900 },
      colorScheme: look.dark ? 'dark' : 'light',
      reducedMotion: 'reduce',
    });
    return new Person(await context.newPage(), context);
  }

  /** Signed in without the screen, for all that begins behind it. */
  async enter(url: string, email: string, password = 'wing-and-tally'): Promise<void> {
    const query =
      'mutation ($email: String!, $password: String!) { signIn(email: $email, password: $password) { id } }';
    const answer = await this.context.request.post(new URL('/graphql', url).href, {
      data: { query, variables: { email, password } },
    });
    const { errors } = (await answer.json()) as { readonly errors?: readonly { readonly message: string }[] };
    if (errors) throw new Error(`${email} is not let in: ${errors.map(({ message }) => message).join('; ')}`);
    await this.page.goto(url);
  }

  /** Signs in on the screen, as people do, and waits until the address they wanted is shown. */
  async signIn(url: string, email: string, password = 'wing-and-tally'): Promise<void> {
    await this.page.goto(url);
    await this.page.getByLabel('E-mail').fill(email);
    await this.page.getByLabel('Password').fill(password);
    await this.page.getByRole('button', { name: 'Sign in' }).click();
    await this.page.getByLabel('E-mail').waitFor({ state: 'detached' });
  }

  /** The board's answer for one aircraft and flight profile, as it is read out. */
  async answer(registration: string, profile: string): Promise<string> {
    const name = await this.page
      .getByRole('link', { name: `${registration}, ${profile}: ` })
      .getAttribute('aria-label');
    return /: ([^:,]+)(?:, rests on .*)?$/.exec(name ?? '')?.[1] ?? '';
  }

  /** What is wrong with the page as it stands: what axe finds, by rule and place, and scrolling sideways. */
  async faults(): Promise<readonly string[]> {
    await this.page.evaluate(axe);
    const found = await this.page.evaluate(async () => {
      const { axe } = globalThis as unknown as {
        axe: { run(): Promise<{ violations: { id: string; nodes: { target: string[] }[] }[] }> };
      };
      return (await axe.run()).violations.flatMap((each) =>
        each.nodes.map((node) => `${each.id}: ${node.target.join(' ')}`),
      );
    });
    const wider = await this.page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    return wider > 0 ? [...found, `wider than the screen: ${wider} px`] : found;
  }

  /** Waits until nothing on the screen is still on its way. */
  async settled(): Promise<void> {
    await this.page.locator('h1, .tw-state').first().waitFor();
    await this.page.locator('.tw-state-loading, main [aria-busy="true"]').first().waitFor({ state: 'detached' });
  }

  /**
   * Whether the browser let them go. Chromium never answers when a page sets out for another address in the very moment in
   * which its context is closed.
   */
  async leave(): Promise<boolean> {
    return await Promise.race([this.context.close().then(() => true), setTimeout(LET_GO, false, { ref: false })]);
  }
}

/** People at one address; all of them leave after each test. */
export function visitors(url: () => string, password?: string) {
  const present: Person[] = [];
  afterEach(async () => {
    const left = await Promise.all(present.splice(0).map((each) => each.leave()));
    if (left.includes(false)) await quit();
  });
  /** Somebody who is not signed in yet. */
  const come = async (look?: Look): Promise<Person> => {
    const someone = await Person.arrive(look);
    present.push(someone);
    return someone;
  };
  /** Somebody who is signed in and sees this path. */
  const arrive = async (path: string, account: string, look?: Look): Promise<Person> => {
    const someone = await come(look);
    await someone.enter(`${url()}${path}`, account, password);
    return someone;
  };
  return { present, come, arrive };
}

/** Chooses from a plain list the option that contains a text. */
export async function choose(list: Locator, text: string): Promise<void> {
  const options = await list.locator('option').allTextContents();
  const found = options.find((option) => option.includes(text));
  if (found === undefined) throw new Error(`"${text}" is not one of: ${options.join(' | ')}`);
  await list.selectOption({ label: found });
}

/** The n-th piece of work on the job screen, from 1. */
export function work(page: Page, n: number): Locator {
  return page.locator('.tw-step').nth(n - 1);
}

/** Adds a piece of work to the plan by its title, and gives its form. */
export async function add(page: Page, title: string): Promise<Locator> {
  const more = page.getByRole('button', { name: 'Add something else' });
  if (await more.isVisible()) await more.click();
  const usual = page.getByRole('list', { name: 'Recorded most' }).getByRole('button', { name: title, exact: true });
  const before = await page.locator('.tw-step').count();
  if (await usual.isVisible()) await usual.click();
  else {
    await page.getByText('Everything that can be recorded').click();
    await page.locator('.tw-add-all').getByRole('button', { name: title, exact: true }).click();
  }
  await work(page, before + 1).waitFor();
  return work(page, before + 1);
}
