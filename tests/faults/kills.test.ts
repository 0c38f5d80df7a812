import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const script = fileURLToPath(new URL('kills.mjs', import.meta.url));
const COUNT = 8;

function kills(...asked: readonly string[]): Promise<{ readonly code: number; readonly output: string }> {
  return new Promise((done) => {
    execFile(process.execPath, [script, ...asked], (error, stdout, stderr) => {
      done({ code: error === null ? 0 : Number(error.code), output: `${stdout}${stderr}` });
    });
  });
}

it(
  'nothing acknowledged is lost or done twice when API, worker, PostgreSQL and its processes are killed under load',
  { timeout: 400_000 },
  async () => {
    const { code, output } = await kills('--count', String(COUNT), '--minutes', '5');
    console.log(output.trim().split('\n').slice(-8).join('\n'));
    // With its seed and its faults in words, should there be any.
    expect({ code, output }).toEqual({ code: 0, output: expect.stringContaining('nothing acknowledged was lost') });
    const [, ...counts] =
      /: (\d+) kills \(api (\d+), worker (\d+), postgres (\d+), backend (\d+)\)/.exec(output)?.map(Number) ?? [];
    expect(counts[0]).toBe(COUNT);
    expect(Math.min(...counts)).toBeGreaterThan(0);
  },
);
