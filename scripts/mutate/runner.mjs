// Runs the tests of the rule library for Stryker in one process, with every module loaded once: they are pure, so a change is
// switched on, the tests about it are run again, and it is switched off. Loading them anew for each change took seconds a change.
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { performance } from 'node:perf_hooks';
import { createViteServer } from 'vitest/node';
import { isAbout, placesOf } from './about.mjs';
import { collected, harness } from './harness.mjs';
import { forgetWhatWasRemembered } from './memory.mjs';
import { inSample } from './sample.mjs';

/** Searches over whole aircraft take half a minute: what only the slowest tests would notice counts as not noticed. */
const mostMs = 5_000;
/** Of these at least so much for what is written down: where every rule reaches a file, the quick tests of all of them fill the time. */
const recordMs = 1_500;
/** A test that takes longer is not put before others, however much it noticed. */
const quickMs = 200;

class OneProcess {
  static inject = ['options'];

  /** Tests by id. */
  #tests = new Map();
  /** When a test last noticed a change, by id: the next change of a file is often noticed by the same test. */
  #noticed = new Map();

  constructor({ mutate }) {
    this.places = placesOf(mutate);
  }

  /** Said to be able to load everything anew, or the whole process would be started again for what also runs while files are loaded. */
  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    process.env.NODE_ENV = 'test';
    globalThis.__stryker__ ??= {};
    globalThis.__tests__ = harness;
    this.server = await createViteServer({
      root: process.cwd(),
      configFile: false,
      logLevel: 'error',
      appType: 'custom',
      server: { middlewareMode: true, watch: null, hmr: false, ws: false },
      optimizeDeps: { noDiscovery: true },
      ssr: { noExternal: ['vitest'] },
      plugins: [ownHarness],
    });
    await this.#load(this.places.flatMap(testFilesBelow));
  }

  async #load(files) {
    collected.clear();
    for (const file of files) {
      collected.file = file;
      await this.server.ssrLoadModule(join(process.cwd(), file));
    }
    this.#tests = new Map(collected.tests);
  }

  async dryRun() {
    globalThis.__stryker__.activeMutant = undefined;
    const tests = [];
    for (const test of this.#tests.values()) {
      globalThis.__stryker__.currentTestId = test.id;
      const began = performance.now();
      const failure = await failureOf(test);
      test.took = performance.now() - began;
      tests.push({
        id: test.id,
        name: test.id,
        fileName: test.file,
        timeSpentMs: test.took,
        ...(failure === null ? { status: 0 } : { status: 1, failureMessage: failure }),
      });
    }
    globalThis.__stryker__.currentTestId = undefined;
    return { status: 'complete', tests, mutantCoverage: globalThis.__stryker__.mutantCoverage };
  }

  async mutantRun({ activeMutant, sandboxFileName, testFilter, hitLimit }) {
    if (!inSample(activeMutant, Number(process.env.SAMPLE ?? 100)))
      return { status: 'error', errorMessage: 'Not in the sample.' };
    const file = relative(process.cwd(), sandboxFileName).split(sep).join('/');
    const ids = (testFilter ?? [...this.#tests.keys()]).filter((id) => isAbout(file, id));
    forgetWhatWasRemembered();
    const switches = globalThis.__stryker__;
    Object.assign(switches, { activeMutant: activeMutant.id, hitCount: 0, hitLimit });
    try {
      const tests = withinTime(ids.map((id) => this.#tests.get(id))).sort(
        (a, b) => Number(isRecord(a)) - Number(isRecord(b)) || this.#lastNoticed(b) - this.#lastNoticed(a),
      );
      for (const [index, test] of tests.entries()) {
        const failure = await failureOf(test);
        if (switches.hitCount > hitLimit) return { status: 'timeout', reason: 'It went round too often.' };
        if (failure !== null) {
          this.#noticed.set(test.id, performance.now());
          return { status: 'killed', killedBy: [test.id], failureMessage: failure, nrOfTests: index + 1 };
        }
      }
      return { status: 'survived', nrOfTests: tests.length };
    } finally {
      Object.assign(switches, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
      forgetWhatWasRemembered();
    }
  }

  #lastNoticed({ id, took = 0 }) {
    return took > quickMs ? 0 : (this.#noticed.get(id) ?? 0);
  }

  async dispose() {
    await this.server?.close();
  }
}

/** The quickest tests, of both sorts, that together take no longer than `mostMs`. */
function withinTime(tests) {
  tests.sort((a, b) => (a.took ?? 0) - (b.took ?? 0));
  const others = tests.filter((each) => !isRecord(each));
  const written = tests.filter(isRecord);
  const kept = Math.min(recordMs, timeOf(written));
  return [...firstOf(others, mostMs - kept), ...firstOf(written, Math.max(kept, mostMs - timeOf(others)))];
}

/** One that would take too long takes the place of no later one. */
function firstOf(tests, most) {
  let left = most;
  return tests.filter(({ took = 0 }) => {
    if (took > left) return false;
    left -= took;
    return true;
  });
}

function timeOf(tests) {
  return tests.reduce((sum, { took = 0 }) => sum + took, 0);
}

/** What is only written down comes last, so that the report tells what nothing else noticed. */
function isRecord({ id }) {
  return id.includes('written down');
}

async function failureOf(test) {
  try {
    await test.run();
    return null;
  } catch (error) {
    return String(error?.message ?? error);
  }
}

function testFilesBelow(home) {
  return readdirSync(home, { recursive: true })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(home, name).split(sep).join('/'))
    .sort();
}

const ownHarness = {
  name: 'own-harness',
  enforce: 'pre',
  resolveId: (id) => (id === 'vitest' ? '\0tests' : null),
  load: (id) => (id === '\0tests' ? 'export const { describe, it, test, expect } = globalThis.__tests__;' : null),
};

export const strykerPlugins = [{ kind: 'TestRunner', name: 'one-process', injectableClass: OneProcess }];
