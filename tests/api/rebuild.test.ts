import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type pg from 'pg';
import { add, daysAgo, defineMeter, flyable, founding, hold, password, readMeter } from './cast.js';
import { Client } from './client.js';
import { asOwner } from './owner.js';
import { Server } from './server.js';

let server: Server;
let owner: pg.Client;

const rebuild = (...flags: string[]) => server.run('aircraft/rebuild-cli.js', '', ...flags);
const windowsOf = async (id: string) =>
  (await owner.query(`select ready, from_at, to_at, above from ready_windows where aircraft_id = $1 order by n`, [id]))
    .rows;

beforeAll(async () => {
  server = await Server.start({ WORKER: 'off' });
  expect((await server.run('house/found-cli.js', JSON.stringify(founding.first))).code).toBe(0);
  const technician = new Client(server.url);
  await technician.signIn('technician@one.example', password);
  const read = readMeter(100_000, `${daysAgo(3)}T12:00Z`);
  for (const [id, changes] of [
    ['sound', [add('TW-B1Q'), defineMeter(), read]],
    ['windows', [add('TW-B2Q', { seats: 1 }), ...flyable(), hold('h', `${daysAgo(1)}T00:00Z`, null)]],
    ['entries', [add('TW-B3Q'), defineMeter(), read]],
    ['stored', [add('TW-B4Q'), defineMeter(), read]],
  ] as const)
    expect((await technician.record(id, 0, changes)).errors).toBeUndefined();
  owner = await asOwner(server);
});

afterAll(async () => {
  await owner.end();
  await server.remove();
});

describe('npm run rebuild', () => {
  it('compares records and read tables, and is content where both agree', async () => {
    const { code, output } = await rebuild();
    expect(output).toContain('4 aircraft replayed, 0 different');
    expect(output).toContain('read tables: 0 aircraft different, 0 waiting');
    expect(output).not.toContain('What to do');
    expect(code).toBe(0);
  });

  it('names damaged read tables and writes nothing; told to, it mends them', async () => {
    const sound = await windowsOf('windows');
    await owner.query(
      `update ready_windows set ready = 'yes'
       where ctid = (select ctid from ready_windows where aircraft_id = 'windows' and ready = 'no' limit 1)`,
    );
    await owner.query(`delete from findings where aircraft_id = 'windows' and rule_id = 'held'`);
    const damaged = await windowsOf('windows');
    expect(damaged).not.toEqual(sound);
    const compared = await rebuild();
    expect(compared.output).toMatch(
      /shop-one TW-B2Q: 1 row of ready_windows, \d+ rows? of findings not what its record/,
    );
    expect(compared.output).toContain('0 different');
    expect(compared.output).toContain('What to do: npm run rebuild -- --write');
    expect(compared.code).toBe(1);
    expect(await windowsOf('windows')).toEqual(damaged);
    const mended = await rebuild('--write');
    expect(mended.output).toContain('read tables: 1 aircraft different, 1 judged anew');
    expect(mended.code).toBe(0);
    expect((await windowsOf('windows')).map((row) => row.ready)).toEqual(sound.map((row) => row.ready));
    expect((await rebuild()).code).toBe(0);
  });

  it('says how many wait to be judged with other flight profiles, and judges them when told to', async () => {
    await owner.query(`update aircraft set profiles_hash = 'others' where id in ('sound', 'windows')`);
    const compared = await rebuild();
    expect(compared.output).toContain('read tables: 0 aircraft different, 2 waiting');
    expect(compared.output).toContain('A running worker judges those that wait');
    expect((await rebuild('--write')).output).toContain('2 judged anew');
    expect((await rebuild()).output).toContain('read tables: 0 aircraft different, 0 waiting');
  });

  it('names the first entry that differs, or the record that is not what its entries give, and mends neither', async () => {
    await owner.query(
      `update changes set body = jsonb_set(body, '{dial}', '90000') where aircraft_id = 'entries' and seq = 3`,
    );
    await owner.query(
      `update aircraft set meters = jsonb_set(meters, '{readings,tach,value}', '1') where id = 'stored'`,
    );
    for (const flags of [[], ['--write']]) {
      const { code, output } = await rebuild(...flags);
      expect(output).toContain('shop-one TW-B3Q: entry 3 (meter.read) gives another record than it did');
      expect(output).toContain('shop-one TW-B4Q: the stored record is not what its 3 entries give');
      expect(output).toContain('4 aircraft replayed, 2 different');
      expect(output).toContain('What to do: record nothing');
      expect(code).toBe(1);
    }
    const { rows } = await owner.query(
      `select meters #>> '{readings,tach,value}' as value from aircraft where id = 'stored'`,
    );
    expect(rows).toEqual([{ value: '1' }]);
  });

  it('leaves what a newer version of the program judged, and knows one option only', async () => {
    await owner.query(`update aircraft set rules_version = '9999' where id = 'sound'`);
    const { output } = await rebuild('--write');
    expect(output).toContain('TW-B1Q: judged by a newer version of the program');
    const { rows } = await owner.query(`select rules_version from aircraft where id = 'sound'`);
    expect(rows).toEqual([{ rules_version: '9999' }]);
    const wrong = await rebuild('--judge-again');
    expect([wrong.code, wrong.output]).toEqual([2, expect.stringContaining('Only --write is known') as string]);
  });
});
