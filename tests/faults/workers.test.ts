import type { Client as Owner } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { add, defineMeter, flyable, founding, hold, password, readMeter, daysAgo } from '../api/cast.js';
import { Client } from '../api/client.js';
import type { Data } from '../api/client.js';
import { asOwner } from '../api/owner.js';
import { Server } from '../api/server.js';
import { Subscriber } from '../api/subscriber.js';

/** Two processes that serve and no more, and two workers, all on one database. */
let first: Server;
let second: Server;
let workers: Server[];
let owner: Owner;
let manager: Client;
let technician: Client;

const SHOP = 'shop-one';
const COUNT = 60;
const ids = Array.from({ length: COUNT }, (_, n) => `fan-${String(n).padStart(2, '0')}`);
/** A busy machine may take long; what is waited for is looked at often. */
const LONG = { timeout: 240_000, interval: 100 };

beforeAll(async () => {
  first = await Server.start({ WORKER: 'off' });
  const { code, output } = await first.run('house/found-cli.js', JSON.stringify(founding.first));
  if (code !== 0) throw new Error(output);
  second = await Server.beside(first, { WORKER: 'off' });
  owner = await asOwner(first);
  manager = await signedIn(first, 'manager@one.example');
  technician = await signedIn(second, 'technician@one.example');
  for (const [n, id] of ids.entries()) await flyableAircraft(id, `TW-F${n}Q`);
  // What is judged, once a time it is: past the application, by the table itself.
  await owner.query(`create table judged_once_a_line (id text, stamp text)`);
  await owner.query(`create function note_judging() returns trigger language plpgsql security definer as
    $$ begin insert into public.judged_once_a_line values (new.id, new.profiles_hash || ' ' || new.rules_version); return new; end $$`);
  await owner.query(`create trigger note_judging after update on aircraft for each row
    when (old.judged_at is distinct from new.judged_at and old.revision = new.revision) execute function note_judging()`);
  workers = await Promise.all([Server.worker(first), Server.worker(first)]);
}, 300_000);
afterAll(async () => {
  await owner.end();
  await Promise.all(workers.map((worker) => worker.stop()));
  await second.stop();
  await first.remove();
});

async function signedIn(server: Server, email: string): Promise<Client> {
  const client = new Client(server.url);
  const answer = await client.signIn(email, password);
  expect(answer.errors).toBeUndefined();
  return client;
}

async function flyableAircraft(id: string, registration: string, more: readonly { readonly kind: string }[] = []) {
  const answer = await technician.record(id, 0, [
    add(registration, { seats: 1 }),
    defineMeter(),
    readMeter(100_000, `${daysAgo(1)}T12:00Z`),
    ...flyable(),
    ...more,
  ]);
  expect(answer.errors).toBeUndefined();
}

/** Other conditions for one flight: every aircraft of the house is judged again. */
async function changeProfile(topFt: number): Promise<void> {
  const { house } = await manager.data('{ house { profiles { id name wanted revision } } }');
  const { id, name, wanted, revision } = house.profiles.find((each: Data) => each.id === 'ferry-crew');
  const conditions = {
    rules: 'VFR',
    light: 'DAY',
    purpose: 'FERRY',
    airspace: [],
    topFt,
    overWaterBeyondGlide: false,
    crewOnly: true,
    approaches: [],
  };
  await manager.data('mutation ($input: AmendFlightProfileInput!) { amendFlightProfile(input: $input) { revision } }', {
    input: { profileId: id, expectedRevision: revision, name, wanted, conditions },
  });
}

/** What each worker wishes for with every minute, wished for now. */
const lookRound = () => owner.query(`select tallywing_queue.add_job('look-round', job_key := 'look-round')`);

const judging = async (): Promise<{ aircraft: number; judgingAgain: number }> =>
  (await technician.data('{ judging { aircraft judgingAgain } }')).judging;
const lines = async (): Promise<number> =>
  (await owner.query<{ n: number }>('select count(*)::int as n from judged_once_a_line')).rows[0]?.n ?? 0;
const counter = async (): Promise<number> =>
  (await technician.data('{ viewer { organisation { counter } } }')).viewer.organisation.counter;

/** No aircraft was judged twice with one stamp, and none was left out. */
async function eachOnce(): Promise<void> {
  const { rows } = await owner.query<{ id: string; n: number }>(
    `select id, count(*)::int as n from judged_once_a_line group by id order by id`,
  );
  expect(rows.filter(({ n }) => n !== 1)).toEqual([]);
  expect(rows.map(({ id }) => id)).toEqual(expect.arrayContaining(ids));
}

const judgedBy = (worker: Server): number =>
  [...worker.said.matchAll(/"judged again".*"aircraft":(\d+)/g)].reduce((sum, [, count]) => sum + Number(count), 0);

describe('two processes that serve and two workers on one database', () => {
  it(
    'judge each aircraft again once after a flight profile changed, and say how far they are',
    { timeout: 300_000 },
    async () => {
      const board = new Subscriber(second.url, { cookie: technician.cookie });
      await expect.poll(() => board.counters.length, LONG).toBe(1);
      const before = await counter();
      await owner.query('truncate judged_once_a_line');
      await changeProfile(8000);
      const seen: number[] = [];
      await expect
        .poll(async () => {
          const { aircraft, judgingAgain } = await judging();
          expect(aircraft).toBe(COUNT);
          seen.push(judgingAgain);
          if (judgingAgain > 0) {
            // Whatever is still as it was judged before is no yes.
            const { readyBoard } = await technician.data(
              '{ readyBoard(first: 100) { edges { node { verdicts { ready judgingAgain } } } } }',
            );
            const verdicts = readyBoard.edges.flatMap((edge: Data) => edge.node.verdicts) as Data[];
            expect(verdicts.filter((each) => each.judgingAgain && each.ready === 'YES')).toEqual([]);
          }
          return judgingAgain;
        }, LONG)
        .toBe(0);
      expect(seen).toEqual([...seen].sort((a, b) => b - a));
      await eachOnce();
      // The change itself and one for each aircraft: nothing was told twice either.
      expect(await counter()).toBe(before + 1 + COUNT);
      await expect.poll(() => board.latest, LONG).toBe(before + 1 + COUNT);
      await board.leave();
      const shares = workers.map(judgedBy);
      console.log(
        `judged again by the two workers: ${shares.join(' and ')}; progress seen: ${[...new Set(seen)].join(', ')}`,
      );
      expect(shares.reduce((sum, each) => sum + each, 0)).toBeGreaterThanOrEqual(COUNT);
      const { readyBoard } = await technician.data('{ readyBoard(first: 100) { counts { yes judgingAgain } } }');
      expect(Math.max(...readyBoard.counts.map((each: Data) => each.yes))).toBe(COUNT);
    },
  );

  it(
    'leave out nothing and do nothing twice when one worker is killed in the middle',
    { timeout: 400_000 },
    async () => {
      await owner.query('truncate judged_once_a_line');
      await changeProfile(7000);
      await expect.poll(lines, { ...LONG, interval: 5 }).toBeGreaterThan(5);
      await workers[0]?.kill();
      expect(await lines()).toBeLessThan(COUNT);
      // The other goes on; what the killed one had wished for or held comes with the next minute.
      await expect.poll(async () => (await judging()).judgingAgain, LONG).toBe(0);
      await eachOnce();
      workers[0] = await Server.worker(first);
    },
  );

  it('pass over one that cannot be judged, tell the log, and come back to it', { timeout: 300_000 }, async () => {
    const [broken = ''] = ids;
    await owner.query(`create function cannot() returns trigger language plpgsql as
      $$ begin raise exception 'cannot be judged'; end $$`);
    await owner.query(`create trigger cannot before update on aircraft for each row
      when (new.id = '${broken}' and old.judged_at is distinct from new.judged_at) execute function cannot()`);
    await owner.query('truncate judged_once_a_line');
    await changeProfile(6000);
    await expect.poll(async () => (await judging()).judgingAgain, LONG).toBe(1);
    await expect
      .poll(() => workers.map(({ said }) => said).join(''), LONG)
      .toMatch(new RegExp(`"reference":"judging ${SHOP} ${broken} again"`));
    await owner.query('drop trigger cannot on aircraft; drop function cannot');
    await lookRound();
    await expect.poll(async () => (await judging()).judgingAgain, LONG).toBe(0);
    await eachOnce();
  });

  it('go on after all connections of the queue were ended', { timeout: 300_000 }, async () => {
    await owner.query('truncate judged_once_a_line');
    const { rowCount } = await owner.query(
      `select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'tallywing queue'`,
    );
    expect(rowCount).toBeGreaterThan(0);
    await changeProfile(5000);
    await expect.poll(async () => (await judging()).judgingAgain, LONG).toBe(0);
    await eachOnce();
  });

  it(
    'go on with what a newer version of the rules asks, and leave alone what a newer one judged',
    { timeout: 300_000 },
    async () => {
      const [{ rules_version: ours }] = (await owner.query('select distinct rules_version from aircraft')).rows as [
        { rules_version: string },
      ];
      const older = ours.replace(/\d+$/, (last) => String(Number(last) - 1));
      // Ten comes after nine: words would be compared otherwise.
      const newer = ours.replace(/\d+$/, (last) => `${last}0`);
      await owner.query('truncate judged_once_a_line');
      await owner.query('update aircraft set rules_version = $1 where id <> $2', [older, ids[0]]);
      await owner.query('update aircraft set rules_version = $1 where id = $2', [newer, ids[0]]);
      await expect.poll(async () => (await judging()).judgingAgain, LONG).toBe(1);
      const { rows } = await owner.query('select id, count(*)::int as n from judged_once_a_line group by id');
      expect(rows.length).toBe(COUNT - 1);
      expect(rows.every(({ n }) => n === 1)).toBe(true);
      const { aircraft } = await technician.data('query ($id: ID!) { aircraft(id: $id) { judgingAgain revision } }', {
        id: ids[0],
      });
      expect(aircraft.judgingAgain).toBe(true);
      const refused = await technician.record(ids[0] ?? '', aircraft.revision, [
        readMeter(100_010, `${daysAgo(0)}T00:00Z`),
      ]);
      expect(refused.errors?.[0]?.extensions.code).toBe('UNAVAILABLE');
      await owner.query('update aircraft set rules_version = $1 where id = $2', [ours, ids[0]]);
    },
  );
});

const byTime = `{ changesSince(since: "2020-01-01T00:00Z") {
  byTime { at aircraft { id } text profile { id } was is } } }`;
const noticed = async (id: string, who = technician): Promise<Data[]> =>
  (await who.data(byTime)).changesSince.byTime.filter((each: Data) => each.aircraft.id === id);

/** As if so many hours had gone by since everything about the house was written, and nobody had looked meanwhile. */
async function hoursGoBy(hours: number): Promise<void> {
  const back = `- interval '${hours} hours'`;
  await owner.query('begin');
  await owner.query(`update ready_windows set from_at = from_at ${back}, to_at = to_at ${back}`);
  await owner.query(`update findings set opens_at = opens_at ${back}, closes_at = closes_at ${back}`);
  await owner.query(`update aircraft set judged_at = judged_at ${back} where judged_at is not null`);
  await owner.query(`update house_watches set noticed_to = noticed_to ${back}`);
  await owner.query('commit');
}

const inHours = (hours: number): string => `${new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 16)}Z`;

describe('what the passing of time changes', () => {
  it('is told to open boards at its minute, and noted once, with two workers', { timeout: 300_000 }, async () => {
    const edge = new Date(Math.ceil((Date.now() + 15_000) / 60_000) * 60_000);
    await flyableAircraft('edge', 'TW-EDQ', [
      hold('short', `${daysAgo(1)}T00:00Z`, `${edge.toISOString().slice(0, 16)}Z`),
    ]);
    const board = new Subscriber(second.url, { cookie: technician.cookie });
    await expect.poll(() => board.counters.length, LONG).toBe(1);
    const before = board.latest;
    await expect.poll(() => board.latest, LONG).toBeGreaterThan(before);
    const late = (performance.timeOrigin + (board.heardAt.at(-1) ?? 0) - edge.getTime()) / 1000;
    console.log(`a board was told ${late.toFixed(1)} s after the minute in which a hold ended`);
    expect(late).toBeGreaterThan(0);
    await board.leave();
    const notices = await noticed('edge');
    expect(notices.map((each) => [each.was, each.is])).toContainEqual(['NO', 'YES']);
    expect(new Set(notices.map((each) => each.at))).toEqual(new Set([`${edge.toISOString().slice(0, 16)}Z`]));
    expect(new Set(notices.map((each) => each.profile?.id ?? each.text)).size).toBe(notices.length);
    expect(await noticed('edge', manager)).toEqual(notices);
  });

  it(
    'is noted once when nobody looked at the time, and also when work put an end to it meanwhile',
    { timeout: 300_000 },
    async () => {
      await Promise.all(workers.map((worker) => worker.stop()));
      const starts = inHours(5);
      for (const id of ['late', 'mended'])
        await flyableAircraft(id, `TW-${id.slice(0, 2).toUpperCase()}Q`, [hold('from', starts, null)]);
      await hoursGoBy(6);
      // Nobody has looked, and the hold that began an hour ago is lifted.
      const { aircraft } = await technician.data('{ aircraft(id: "mended") { revision } }');
      const lifted = await technician.record('mended', aircraft.revision, [
        { kind: 'hold.lift', version: 1, holdId: 'from', at: inHours(0), reason: 'Part came' } as never,
      ]);
      expect(lifted.errors).toBeUndefined();
      const mended = await noticed('mended');
      expect(mended.map((each) => [each.was, each.is])).toContainEqual(['YES', 'NO']);
      workers = await Promise.all([Server.worker(first), Server.worker(first)]);
      await expect.poll(async () => (await noticed('late')).length, LONG).toBeGreaterThan(0);
      const late = await noticed('late');
      expect(late.map((each) => [each.was, each.is])).toContainEqual(['YES', 'NO']);
      expect(late.filter((each) => each.text !== null).length).toBe(1);
      // Looked at once more from the beginning, as after a watch that was lost: still once.
      await owner.query(`update house_watches set noticed_to = noticed_to - interval '9 hours'`);
      await lookRound();
      const looked = async () =>
        (await owner.query(`select 1 from house_watches where noticed_to > now() - interval '5 minutes'`)).rowCount;
      await expect.poll(looked, LONG).toBe(1);
      expect(await noticed('late')).toEqual(late);
      expect(await noticed('mended')).toEqual(mended);
    },
  );
});

describe('the queue', () => {
  it('carries ids of houses and nothing else', async () => {
    await expect
      .poll(async () => (await owner.query('select 1 from tallywing_queue.jobs')).rowCount, LONG)
      .toBeGreaterThan(0);
    const { rows } = await owner.query<{ payload: object }>('select payload from tallywing_queue._private_jobs');
    for (const { payload } of rows)
      for (const [name, value] of Object.entries(payload))
        if (name !== '_cron')
          expect([name, String(value)]).toEqual([
            expect.stringMatching(/^(house|helper)$/),
            expect.stringMatching(/^(shop-one|\d)$/),
          ]);
  });

  it.each([
    'select * from tallywing_queue._private_jobs',
    'select * from tallywing_queue.jobs',
    `select tallywing_queue.add_job('watch-house', '{"house":"shop-two"}')`,
    'delete from tallywing_queue._private_jobs',
  ])('is closed to the application: %s', async (statement) => {
    await owner.query('begin');
    await owner.query(`set local role tallywing_app; set local tallywing.organisation = '${SHOP}'`);
    await expect(owner.query(statement)).rejects.toMatchObject({ code: '42501' });
    await owner.query('rollback');
  });

  it('takes a wish for the own house alone, and only with the transaction that had the reason', async () => {
    const wished = async (): Promise<string[]> =>
      (
        await owner.query<{ key: string }>(`select key from tallywing_queue.jobs where key like 'watch-house %'`)
      ).rows.map(({ key }) => key);
    await owner.query('begin');
    await owner.query('set local role tallywing_app');
    await expect(owner.query('select tallywing_judge_again()')).rejects.toThrow(/no organisation is set/);
    await owner.query('rollback');
    await owner.query('begin');
    await owner.query(`set local role tallywing_app; set local tallywing.organisation = 'shop-nowhere'`);
    await owner.query('select tallywing_judge_again()');
    await owner.query('reset role');
    expect(await wished()).toContain('watch-house shop-nowhere');
    await owner.query('rollback');
    expect(await wished()).not.toContain('watch-house shop-nowhere');
  });
});
