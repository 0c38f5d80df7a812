import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { root } from './paths.mjs';

const stopSignals = ['SIGINT', 'SIGTERM', 'SIGHUP'];

const exitCode = (code, signal) => code ?? 128 + (constants.signals[signal] ?? 0);

/** What is collected is read as text, so without colours, whatever the terminal wants. */
function withoutColours(env) {
  const plain = { ...process.env, NO_COLOR: '1', ...env };
  delete plain.FORCE_COLOR;
  return plain;
}

/**
 * Runs a command quietly and collects what it prints.
 * @returns {Promise<{ code: number, output: string }>} 127 when the command does not exist
 */
export function quiet(file, args, { env = {}, cwd = root, timeout } = {}) {
  return new Promise((resolve) => {
    const child = spawn(file, args, {
      cwd,
      env: withoutColours(env),
      stdio: ['ignore', 'pipe', 'pipe'],
      windowsHide: true,
      ...(timeout ? { timeout, killSignal: 'SIGKILL' } : {}),
    });
    let output = '';
    const collect = (chunk) => (output += chunk);
    child.stdout.setEncoding('utf8').on('data', collect);
    child.stderr.setEncoding('utf8').on('data', collect);
    child.on('error', (error) => resolve({ code: 127, output: output + error.message }));
    child.on('close', (code, signal) => resolve({ code: exitCode(code, signal), output }));
  });
}

/**
 * Calls `work` once npm has ended before us: it passes a request to stop on to the shell between it and us, and that
 * shell ends without passing it on.
 * @returns {() => void} stops watching
 */
function whenNpmIsGone(work) {
  if (!process.env.npm_lifecycle_event) return () => undefined;
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    work();
  }, 500);
  return () => clearInterval(watch);
}

/**
 * Runs a command on the same terminal and waits for it. Asked to stop meanwhile, this process stops the command first
 * and then ends. @returns {Promise<number>} its exit code
 */
export function shown(file, args, { env = {}, cwd = root } = {}) {
  return new Promise((resolve) => {
    const child = spawn(file, args, { cwd, env: { ...process.env, ...env }, stdio: 'inherit' });
    let asked;
    const stop = (signal) => {
      asked = signal;
      child.kill(signal);
    };
    const unwatch = whenNpmIsGone(() => stop('SIGTERM'));
    const ended = (code) => {
      unwatch();
      for (const signal of stopSignals) process.removeListener(signal, stop);
      if (asked) process.exit(exitCode(null, asked));
      resolve(code);
    };
    for (const signal of stopSignals) process.on(signal, stop);
    child.once('error', (error) => {
      console.error(error.message);
      ended(127);
    });
    child.once('close', (code, signal) => ended(exitCode(code, signal)));
  });
}

/**
 * Starts long-running commands on the same terminal and stops them together: when one ends, or when this process is
 * asked to stop, the others are asked to stop too.
 *
 * Each runs in a process group of its own, because a terminal sends Ctrl-C to the whole group: the database below the
 * API would stop before the API has finished with it. This process passes the request on, once.
 * @param {{ file: string, args: string[], env?: Record<string, string>, cwd?: string }[]} commands
 * @returns {Promise<number>} the exit code of the first that ended
 */
export function foreground(commands) {
  return new Promise((resolve) => {
    const ownGroup = process.platform !== 'win32';
    const stop = (signal) => children.forEach((child) => child.exitCode === null && child.kill(signal));
    let first;
    let running = commands.length;
    const ended = (code) => {
      if (first === undefined) {
        first = code;
        stop('SIGTERM');
      }
      if (--running === 0) {
        unwatch();
        for (const signal of stopSignals) process.removeAllListeners(signal);
        resolve(first);
      }
    };
    const children = commands.map(({ file, args, env = {}, cwd = root }) => {
      const child = spawn(file, args, {
        cwd,
        env: { ...process.env, ...env },
        stdio: ['ignore', 'inherit', 'inherit'],
        detached: ownGroup,
      });
      child.once('error', (error) => {
        console.error(error.message);
        ended(127);
      });
      child.once('exit', (code, signal) => ended(exitCode(code, signal)));
      return child;
    });
    const unwatch = whenNpmIsGone(() => stop('SIGTERM'));
    let asked = 0;
    const passOn = (signal) => {
      // npm and the terminal may both tell us of one Ctrl-C.
      if (Date.now() - asked < 500) return;
      asked = Date.now();
      stop(signal === 'SIGHUP' ? 'SIGTERM' : signal);
    };
    for (const signal of stopSignals) process.on(signal, passOn);
  });
}
