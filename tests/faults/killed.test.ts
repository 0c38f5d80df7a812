import { spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, founding, password, readMeter } from '../api/cast.js';
import { Client } from '../api/client.js';
import { changeInput } from '../api/inputs.js';
import { Server } from '../api/server.js';

let server: Server;
beforeAll(async () => {
  server = await Server.start();
  const { code, output } = await server.run('house/found-cli.js', JSON.stringify(founding.first));
  if (code !== 0) throw new Error(output);
});
afterAll(() => server.remove());

async function technician(): Promise<Client> {
  const client = new Client(server.url);
  const answer = await client.signIn('technician@one.example', password);
  expect(answer.errors).toBeUndefined();
  return client;
}

interface Sent {
  readonly key: string;
  readonly aircraftId: string;
  readonly expectedRevision: number;
  readonly changes: readonly unknown[];
  acknowledged: boolean;
}

/** Records on one aircraft, one piece after the other, until the connection breaks. */
async function recordUntilBroken(
  client: Client,
  aircraftId: string,
  from: { revision: number; dial: number },
  sent: Sent[],
): Promise<void> {
  for (;;) {
    const work: Sent = {
      key: randomUUID(),
      aircraftId,
      expectedRevision: from.revision,
      changes: [from.dial + 1, from.dial + 2].map((dial) => changeInput(readMeter(dial, `${daysAgo(1)}T12:00Z`))),
      acknowledged: false,
    };
    sent.push(work);
    const { acknowledged: _, ...input } = work;
    const answer = await client.send(input).catch(() => null);
    if (answer?.data?.commitChanges == null) return;
    work.acknowledged = true;
    from.revision += 2;
    from.dial += 2;
  }
}

const pause = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds));

describe('an API that is killed while people record', () => {
  it(
    'has kept everything it acknowledged, and every other piece of work whole or not at all',
    { timeout: 400_000 },
    async () => {
      const ids = ['kill-a', 'kill-b', 'kill-c'];
      const state = new Map(ids.map((id) => [id, { revision: 3, dial: 100_000 }]));
      const first = await technician();
      for (const [index, id] of ids.entries()) {
        const answer = await first.record(id, 0, [
          add(`TW-K${index}Q`),
          defineMeter(),
          readMeter(100_000, `${daysAgo(2)}T12:00Z`),
        ]);
        expect(answer.errors).toBeUndefined();
      }
      let acknowledged = 0;
      let cut = 0;
      for (let round = 0; round < 4; round += 1) {
        const sent: Sent[] = [];
        const client = await technician();
        const working = Promise.all(
          ids.map((id) => recordUntilBroken(client, id, state.get(id) ?? { revision: 0, dial: 0 }, sent)),
        );
        // In the middle of the work whatever the speed of the machine: some pieces are done, the next ones are on their way.
        while (sent.filter((work) => work.acknowledged).length < 3 + round) await pause(2);
        await pause(Math.random() * 40);
        await server.kill();
        await working;
        await server.restart();
        const after = await technician();
        for (const work of sent) {
          const known = state.get(work.aircraftId);
          if (!known) throw new Error('nobody works on this aircraft');
          const { aircraft } = await after.data(
            'query ($id: ID!) { aircraft(id: $id) { revision meters { hours } history(first: 1) { totalCount } } }',
            { id: work.aircraftId },
          );
          expect(aircraft.history.totalCount).toBe(aircraft.revision);
          if (work.acknowledged) {
            acknowledged += 1;
            expect(aircraft.revision).toBeGreaterThanOrEqual(work.expectedRevision + 2);
            continue;
          }
          cut += 1;
          // Whole or absent: never the first reading without the second.
          expect([work.expectedRevision, work.expectedRevision + 2]).toContain(aircraft.revision);
          // Sending it again does it once, whichever it was.
          const { acknowledged: _, ...input } = work;
          const again = await after.send(input);
          expect(again.errors).toBeUndefined();
          expect(again.data.commitChanges.revision).toBe(work.expectedRevision + 2);
          known.revision = work.expectedRevision + 2;
          known.dial += 2;
          const final = await after.data('query ($id: ID!) { aircraft(id: $id) { revision meters { hours } } }', {
            id: work.aircraftId,
          });
          expect(final.aircraft).toEqual({ revision: known.revision, meters: [{ hours: known.dial / 100 }] });
        }
      }
      expect(acknowledged).toBeGreaterThan(10);
      expect(cut).toBeGreaterThan(5);
      const replayed = await server.run('aircraft/rebuild-cli.js');
      expect(replayed.output).toContain(`${ids.length} aircraft replayed, 0 different`);
      expect(replayed.code).toBe(0);
    },
  );

  it('keeps people signed in and their work through an ordinary restart', async () => {
    const client = await technician();
    const look = '{ viewer { name } aircraft(id: "kill-a") { revision meters { hours } findings { key opensAt } } }';
    const before = await client.data(look);
    await server.stop();
    await server.restart();
    expect(await client.data(look)).toEqual(before);
  });

  it('says what to do when its port is taken', async () => {
    const second = spawnSync(
      process.execPath,
      [fileURLToPath(new URL('../../apps/api/dist/main.js', import.meta.url))],
      {
        env: {
          ...process.env,
          PORT: new URL(server.url).port,
          DATA_DIR: server.dataDir,
          DATABASE_URL: '',
          DEMO: 'off',
        },
        encoding: 'utf8',
      },
    );
    expect(second.status).toBe(1);
    expect(second.stdout).toMatch(/is taken\..*PORT=\d+ npm start/);
    expect((await fetch(`${server.url}/health/ready`)).status).toBe(200);
  });
});
