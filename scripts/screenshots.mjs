// node scripts/screenshots.mjs [name ...]: pictures of the screens (all, or those named) for README.md, of the built
// application with its demo.
import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(root, 'docs/screens');
const flags = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'];

/** Name of the picture, address, and what must be seen before it is taken. */
const screens = [
  { name: 'ready-board', path: '/', ready: (page) => page.locator('.recharts-surface').first() },
  {
    name: 'aircraft',
    path: '/aircraft/tw-09q?profile=ifr-lesson-vor-loc',
    ready: (page) => page.locator('.tw-line-drawing'),
    prepare: openReason,
  },
  { name: 'job', path: '/aircraft/tw-01q/job', ready: (page) => page.getByText('What this does'), prepare: planWork },
  {
    name: 'catalogue',
    path: '/catalogue?text=QN+52',
    ready: (page) => page.getByRole('link', { name: /QN 52/ }),
    prepare: reviseType,
  },
  { name: 'due-ahead', path: '/due', ready: (page) => page.locator('.recharts-surface').first() },
];

const looks = [
  { name: '360', width: 360, height: 780 },
  { name: '820', width: 820, height: 1100 },
  { name: '1440', width: 1440, height: 900 },
  { name: '1440-dark', width: 1440, height: 900, dark: true },
];

async function openReason(page) {
  await page.locator('.tw-because summary').first().click();
  await page.getByText('The rule asks:').first().waitFor();
}

/** A plan as a technician makes it: one unit out, another in. */
async function planWork(page) {
  const usual = (title) => page.locator('.tw-add').first().getByRole('button', { name: title, exact: true }).click();
  await usual('Take a unit out');
  const unit = page.locator('.tw-step').nth(0).getByLabel('Unit', { exact: true });
  const options = await unit.locator('option').allTextContents();
  await unit.selectOption({ label: options.find((option) => option.includes('QN 20V')) });
  await page.locator('.tw-step').nth(0).getByLabel('Reason').fill('Replaced by a navigator with vertical guidance');
  await page.getByRole('button', { name: 'Add something else' }).click();
  await usual('Fit a unit');
  await page.getByRole('combobox', { name: /Equipment type/ }).fill('QN 52');
  await page.getByRole('option').first().click();
  await page.getByText('Findings that it opens').waitFor();
}

/** A revision with a limitation that costs something, judged on the aircraft that have the product, and not saved. */
async function reviseType(page) {
  await page.getByRole('link', { name: /QN 52/ }).click();
  await page.getByRole('link', { name: 'Revise', exact: true }).click();
  await page.getByLabel('Revision of the manual').fill('E');
  await page.getByRole('region', { name: 'Limitations' }).getByRole('button', { name: 'Add a row' }).click();
  const limit = page.locator('#limitations .tw-row-fold').last();
  await limit.getByLabel('Kind').selectOption({ label: 'Requires' });
  await limit.getByRole('group', { name: 'Gives this' }).getByLabel('GNSS').check();
  await limit.getByRole('group', { name: 'Only joined to a unit that does' }).getByLabel('DME').check();
  await limit.getByLabel('Document').fill('QN 52 installation manual');
  await limit.getByLabel('Paragraph').fill('3.9');
  await page.getByRole('button', { name: /^Check/ }).click();
  await page.getByText('would be judged otherwise').waitFor();
}

const freePort = () =>
  new Promise((done, fail) => {
    const probe = createServer().once('error', fail);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => done(port));
    });
  });

async function startApplication(dataDir) {
  const port = await freePort();
  const child = spawn(process.execPath, [join(root, 'apps/api/dist/main.js')], {
    env: { ...process.env, PORT: String(port), DATA_DIR: dataDir, DATABASE_URL: '', HOST: '127.0.0.1', DEMO: 'on' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await new Promise((done, fail) => {
    child.stdout.on('data', (text) => String(text).includes('tallywing: open http') && done());
    child.once('exit', () => fail(new Error('The application did not start. Run npm run build first.')));
  });
  return { child, url: `http://127.0.0.1:${port}` };
}

async function take(url, look) {
  const context = await chromium.launchPersistentContext(mkdtempSync(join(tmpdir(), 'tallywing-pictures-')), {
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    headless: true,
    args: flags,
    viewport: { width: look.width, height: look.height },
    colorScheme: look.dark ? 'dark' : 'light',
    reducedMotion: 'reduce',
  });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(url);
  await page.getByLabel('E-mail').fill('technician@wendle.example');
  await page.getByLabel('Password').fill('wing-and-tally');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('navigation', { name: 'Screens' }).waitFor();
  const wanted = process.argv.slice(2);
  for (const screen of screens.filter(({ name }) => wanted.length === 0 || wanted.includes(name))) {
    await page.goto(url + screen.path);
    await screen.ready(page).waitFor();
    await screen.prepare?.(page);
    await page.waitForLoadState('networkidle');
    await page.evaluate(() => scrollTo(0, 0));
    const file = `${screen.name}-${look.name}.png`;
    await page.screenshot({ path: join(folder, file) });
    console.log(`docs/screens/${file}`);
  }
  await context.close();
}

mkdirSync(folder, { recursive: true });
const dataDir = mkdtempSync(join(tmpdir(), 'tallywing-pictures-'));
chmodSync(dataDir, 0o711);
const { child, url } = await startApplication(dataDir);
try {
  for (const look of looks) await take(url, look);
} finally {
  child.kill('SIGTERM');
  await new Promise((done) => child.once('close', done));
  rmSync(dataDir, { recursive: true, force: true });
}
