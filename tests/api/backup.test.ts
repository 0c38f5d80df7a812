import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, founding, password, readMeter } from './cast.js';
import { Client } from './client.js';
import type { Data } from './client.js';
import { Server } from './server.js';

let server: Server;
let place = '';
let backup = '';
const planes = ['back-a', 'back-b', 'back-c'];
const revisions = new Map<string, number>();

beforeAll(async () => {
  place = await mkdtemp(join(tmpdir(), 'tallywing-backup-'));
  backup = join(place, 'first');
  server = await Server.start();
  const { code, output } = await server.run('house/found-cli.js', JSON.stringify(founding.first));
  if (code !== 0) throw new Error(output);
  const client = await technician();
  for (const [index, id] of planes.entries()) {
    const answer = await client.record(id, 0, [add(`TW-B${index}K`), defineMeter()]);
    expect(answer.errors).toBeUndefined();
    revisions.set(id, 2);
  }
});
afterAll(async () => {
  await server.remove();
  await rm(place, { recursive: true, force: true });
});

async function technician(): Promise<Client> {
  const client = new Client(server.url);
  expect((await client.signIn('technician@one.example', password)).errors).toBeUndefined();
  return client;
}

async function stored(client: Client): Promise<Data> {
  return await client.data(
    `{ ${planes.map((id, index) => `p${index}: aircraft(id: "${id}") { revision dossier meters { hours } findings { key opensAt } }`).join(' ')} }`,
  );
}

/** Records on every aircraft until told to stop; gives the revision that was acknowledged last for each. */
async function work(client: Client, going: () => boolean): Promise<void> {
  for (let dial = 100_000; going(); dial += 1) {
    for (const id of planes) {
      const revision = revisions.get(id) ?? 0;
      const answer = await client.record(id, revision, [readMeter(dial, `${daysAgo(1)}T12:00Z`)]);
      if (answer.errors) throw new Error(JSON.stringify(answer.errors));
      revisions.set(id, answer.data.commitChanges.revision);
    }
  }
}

describe('a backup', () => {
  let acknowledgedBefore = new Map<string, number>();

  it('is taken while people record, and says what it holds', async () => {
    const client = await technician();
    let going = true;
    const working = work(client, () => going);
    await expect.poll(() => revisions.get('back-c') ?? 0, { timeout: 20_000 }).toBeGreaterThan(3);
    acknowledgedBefore = new Map(revisions);
    const { code, output } = await server.run('database/backup-cli.js', '', backup);
    going = false;
    await working;
    expect({ code, output }).toMatchObject({ code: 0 });
    expect(output).toMatch(/backup of \d{3,} files in .*first, tables as of \d{14}_/);
    expect(readdirSync(backup).sort()).toEqual(['backup.json', 'files', 'server.json']);
    expect(existsSync(join(backup, 'files', 'postmaster.pid'))).toBe(false);
  });

  it('is overwritten by no other', async () => {
    const { code, output } = await server.run('database/backup-cli.js', '', backup);
    expect(code).toBe(1);
    expect(output).toMatch(/is there already\. Choose another place/);
  });

  it('does not go into place while the application runs, nor over data without a say-so', async () => {
    const running = await server.run('database/restore-cli.js', '', backup, '--replace');
    expect(running).toMatchObject({ code: 1 });
    expect(running.output).toMatch(/still runs on .*\. Stop it and its workers/);
    await server.stop();
    const unsaid = await server.run('database/restore-cli.js', '', backup);
    expect(unsaid).toMatchObject({ code: 1 });
    expect(unsaid.output).toMatch(/holds data already\..*--replace/);
  });

  it('brings everything back that was acknowledged before it began, and is checked by replaying it', async () => {
    const { code, output } = await server.run('database/restore-cli.js', '', backup, '--replace');
    expect({ code, output }).toMatchObject({ code: 0 });
    expect(output).toContain('3 aircraft replayed, 0 different');
    expect(output).toContain('restored, and every record is what its entries give');
    const aside = readdirSync(server.dataDir).find((name) => name.startsWith('before-restore-')) ?? 'none';
    expect(readdirSync(join(server.dataDir, aside)).sort()).toEqual(['postgres', 'server.json']);
    await server.restart();
    const client = await technician();
    const found = await stored(client);
    for (const [index, id] of planes.entries()) {
      expect(found[`p${index}`].revision).toBeGreaterThanOrEqual(acknowledgedBefore.get(id) ?? 0);
      expect(found[`p${index}`].revision).toBeLessThanOrEqual(revisions.get(id) ?? 0);
    }
    // It is a database to work with, not only to look at.
    const next = await client.record('back-a', found.p0.revision, [readMeter(200_000, `${daysAgo(0)}T00:00Z`)]);
    expect(next.errors?.[0]?.extensions.code ?? 'none').not.toBe('INTERNAL');
    expect((await fetch(`${server.url}/health/ready`)).status).toBe(200);
  });

  it('is the same to the last figure when it is taken of a server that is stopped', async () => {
    const before = await stored(await technician());
    await server.stop();
    const cold = join(place, 'cold');
    expect(await server.run('database/backup-cli.js', '', cold)).toMatchObject({ code: 0 });
    expect(await server.run('database/restore-cli.js', '', cold, '--replace')).toMatchObject({ code: 0 });
    await server.restart();
    expect(await stored(await technician())).toEqual(before);
    await server.stop();
  });

  it('that is damaged is refused before anything is touched', async () => {
    const path = join(backup, 'files', 'PG_VERSION');
    const whole = readFileSync(path);
    writeFileSync(path, '17\n');
    const before = readdirSync(server.dataDir);
    const { code, output } = await server.run('database/restore-cli.js', '', backup, '--replace');
    writeFileSync(path, whole);
    expect(code).toBe(1);
    expect(output).toMatch(/is damaged: PG_VERSION is not what was written\. Use another backup/);
    expect(readdirSync(server.dataDir)).toEqual(before);
    const none = await server.run('database/restore-cli.js', '', place, '--replace');
    expect(none.output).toMatch(/is no backup/);
  });
});
