import { readFileSync } from 'node:fs';

/**
 * Tells two processes apart that were given the same number one after the other (start time in clock ticks, on Linux).
 * Empty where the system does not say.
 */
export function startMark(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  } catch {
    return '';
  }
}

/** True while the process with this number, and if known with this start mark, is alive. */
export function isAlive(pid: number, mark = ''): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    // EPERM: alive, but of another user.
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  const now = startMark(pid);
  return mark === '' || now === '' || now === mark;
}

/** What a live process calls itself, empty when unknown. */
export function commandOf(pid: number): string {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ');
  } catch {
    return '';
  }
}

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, milliseconds);
  });
