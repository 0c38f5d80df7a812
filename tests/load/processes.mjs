// What the scripts under load share: the built application as processes, and people who ask it over the network.
import { spawn } from 'node:child_process';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A file of the built API. */
export const built = (path) => new URL(`../../apps/api/dist/${path}`, import.meta.url);

export const pause = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));

export function freePort() {
  return new Promise((done, fail) => {
    const probe = createServer().once('error', fail);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => done(port));
    });
  });
}

/** A directory for data, and what takes it away again. */
export async function dataDirectory(name) {
  const path = await mkdtemp(join(tmpdir(), `tallywing-${name}-`));
  await chmod(path, 0o711); // The user of the server passes through.
  return { path, remove: () => rm(path, { recursive: true, force: true }) };
}

/**
 * Starts one of the programs of the built API and waits until it says that it is ready.
 * @param {string} program such as `main.js`
 * @returns {Promise<{ child: import('node:child_process').ChildProcess, output: () => string, ended: Promise<number> }>}
 */
export async function start(program, env, ready = 'tallywing: open http', input = '') {
  const child = spawn(process.execPath, [fileURLToPath(built(program))], {
    env: { ...process.env, HOST: '127.0.0.1', DATABASE_URL: '', REQUESTS_PER_MINUTE: '1000000', ...env },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  child.stdin.end(input);
  let output = '';
  const ended = new Promise((done) => child.once('close', (code) => done(code ?? -1)));
  const isReady = new Promise((done, fail) => {
    const hear = (chunk) => {
      output = (output + chunk).slice(-200_000);
      if (ready !== null && output.includes(ready)) done();
    };
    child.stdout.setEncoding('utf8').on('data', hear);
    child.stderr.setEncoding('utf8').on('data', hear);
    child.once('close', () => (ready === null ? done() : fail(new Error(`${program} did not start:\n${output}`))));
  });
  await isReady;
  return { child, output: () => output, ended };
}

/** Runs one of the commands of the built API to its end. */
export async function run(program, env) {
  const { ended, output } = await start(program, env, null);
  return { code: await ended, output: output() };
}

export async function stop({ child, ended }) {
  child.kill('SIGTERM');
  await ended;
}

/** Somebody at a browser. */
export class Person {
  cookie = '';

  constructor(url) {
    this.url = url;
  }

  static async signedIn(url, { email, password }) {
    const person = new Person(url);
    const answer = await person.ask(
      'mutation ($email: String!, $password: String!) { signIn(email: $email, password: $password) { id } }',
      { email, password },
    );
    if (answer.errors) throw new Error(JSON.stringify(answer.errors));
    return person;
  }

  /** The whole answer; throws only where there was none. */
  async ask(query, variables = {}) {
    const response = await fetch(`${this.url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: this.cookie },
      body: JSON.stringify({ query, variables }),
      signal: AbortSignal.timeout(60_000),
    });
    const [set] = response.headers.getSetCookie();
    if (set) this.cookie = set.split(';')[0];
    return await response.json();
  }

  async data(query, variables) {
    const { data, errors } = await this.ask(query, variables);
    if (errors) throw new Error(JSON.stringify(errors));
    return data;
  }
}

/** The first account of this role that the demo prints. */
export async function accountOf(api, role) {
  for (;;) {
    const found = new RegExp(`demo account: (${role}@\\S+) {2}(\\S+)`).exec(api.output());
    if (found) return { email: found[1], password: found[2] };
    await pause(50);
  }
}

/** Middle, and what 95 of 100 stay under, in milliseconds. */
export function spread(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share) => (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(1);
  return `median ${at(0.5)} ms, p95 ${at(0.95)} ms`;
}

export const RECORD = 'mutation ($input: CommitChangesInput!) { commitChanges(input: $input) { revision } }';
