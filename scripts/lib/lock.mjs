import { createHash } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './paths.mjs';

const file = join(tmpdir(), `tallywing-build-${createHash('sha256').update(root).digest('hex').slice(0, 16)}.lock`);
const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** The process that holds the lock; undefined when it has ended without taking the lock away. */
function holder() {
  try {
    const pid = Number(readFileSync(file, 'utf8'));
    return pid > 0 && isAlive(pid) ? pid : undefined;
  } catch {
    return undefined;
  }
}

/** One build of a checkout at a time: `npm start` and `npm test` in two terminals would write the same files. */
export async function oneAtATime(work) {
  for (let told = false; ;) {
    try {
      writeFileSync(file, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const other = holder();
    if (other === undefined) {
      rmSync(file, { force: true });
      continue;
    }
    if (!told) console.log(`  waiting for another build of this checkout (process ${other})`);
    told = true;
    await pause(300);
  }
  const release = () => rmSync(file, { force: true });
  process.once('exit', release);
  try {
    return await work();
  } finally {
    release();
    process.removeListener('exit', release);
  }
}
