import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { tool } from './paths.mjs';
import { quiet } from './run.mjs';
import { StepError } from './steps.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const usual = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/opt/google/chrome/chrome'],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  ],
};

/** Where the browser tool keeps the browser that it installs itself, whether or not it is there. */
async function ownBrowser() {
  const { chromium } = await import('playwright-core');
  return chromium.executablePath();
}

async function candidates() {
  const onPath = (process.env.PATH ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  return [...(usual[process.platform] ?? []), ...onPath, await ownBrowser()];
}

/** A file may be there and yet start nothing: some systems put a placeholder where the browser would be. */
async function works(path) {
  if (!path || !existsSync(path)) return false;
  // On Windows the browser opens a window instead of printing its version.
  if (process.platform === 'win32') return true;
  const { code, output } = await quiet(path, ['--version'], { timeout: 20_000 });
  return code === 0 && /\d+\.\d+/.test(output);
}

async function firstThatWorks() {
  for (const path of new Set(await candidates())) if (await works(path)) return path;
  return undefined;
}

const isRoot = () => process.getuid?.() === 0;

async function hasApt() {
  return process.platform === 'linux' && (await quiet('apt-get', ['--version'])).code === 0;
}

async function installFromSystem() {
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const install = () => quiet('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { env });
  const first = await install();
  if (first.code === 0) return first.output;
  // A fresh machine has no lists of packages yet.
  const update = await quiet('apt-get', ['update'], { env });
  return first.output + update.output + (await install()).output;
}

const installOwn = async (withLibraries) =>
  (await quiet(process.execPath, [tool.playwright, 'install', ...(withLibraries ? ['--with-deps'] : []), 'chromium']))
    .output;

/**
 * Path of a browser for the tests: the one that `CHROMIUM` names, else one of this system, else one that is installed
 * now. Without any the tests cannot say anything about the screens, so that is a failure and never a silent skip.
 */
export async function findBrowser() {
  const named = process.env.CHROMIUM;
  if (named) {
    if (await works(named)) return named;
    throw new StepError(
      `CHROMIUM names ${named}, and that does not start as a browser.`,
      'set CHROMIUM to a Chromium or Chrome executable, or unset it, then run npm test again.',
    );
  }
  const there = await firstThatWorks();
  if (there) return there;

  const apt = isRoot() && (await hasApt());
  let output = '';
  if (apt) {
    output += await installFromSystem();
    const found = await firstThatWorks();
    if (found) return found;
  }
  output += await installOwn(apt);
  const found = await firstThatWorks();
  if (found) return found;
  throw new StepError(
    'The browser tests need Chromium, and it could not be installed.',
    `run \`${apt || !(await hasApt()) ? '' : 'sudo '}${
      (await hasApt()) ? 'apt-get install -y chromium' : 'npx playwright-core install chromium'
    }\`, or set CHROMIUM to a Chromium or Chrome executable; then run npm test again.`,
    output.split('\n').slice(-20).join('\n'),
  );
}
