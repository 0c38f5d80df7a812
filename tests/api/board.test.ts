import { beforeAll, describe, expect, it } from 'vitest';
import { openDatabase } from '../../apps/api/dist/database/open.js';
import { readSettings } from '../../apps/api/dist/settings.js';
import { add, daysAgo, defineMeter, hold, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';
import { shared } from './shared.js';

let technician: Client;
let manager: Client;
const count = 23;

beforeAll(async () => {
  technician = await as('technician@two.example');
  manager = await as('manager@two.example');
  for (let each = 1; each <= count; each += 1) {
    const number = String(each).padStart(2, '0');
    const answer = await technician.record(`page-${number}`, 0, [
      add(`TW-P${number}`, { make: 'Pageant', base: { id: 'pages', name: 'Pages field', zone: 'Pacific/Auckland' } }),
      defineMeter(),
      readMeter(100_000, `${daysAgo(2)}T12:00Z`),
      ...(each % 2 === 0 ? [hold('held', `${daysAgo(1)}T00:00Z`, `${daysAgo(-30)}T12:00Z`)] : []),
    ]);
    expect(answer.errors).toBeUndefined();
  }
});

const page = `query ($first: Int, $after: String) { readyBoard(first: $first, after: $after, filter: { baseId: "pages" }) {
  totalCount pageInfo { hasNextPage hasPreviousPage startCursor endCursor }
  edges { cursor node { aircraft { registration } } } } }`;

describe('connections', () => {
  it('pages through everything once, in order, by endCursor', async () => {
    const seen: string[] = [];
    let after: string | null = null;
    let pages = 0;
    for (;;) {
      const { readyBoard }: Data = await technician.data(page, { first: 5, after });
      pages += 1;
      expect(readyBoard.totalCount).toBe(count);
      expect(readyBoard.pageInfo.startCursor).toBe(readyBoard.edges[0].cursor);
      expect(readyBoard.pageInfo.endCursor).toBe(readyBoard.edges.at(-1).cursor);
      expect(readyBoard.pageInfo.hasPreviousPage).toBe(after !== null);
      seen.push(...readyBoard.edges.map((edge: Data) => edge.node.aircraft.registration));
      if (!readyBoard.pageInfo.hasNextPage) break;
      after = readyBoard.pageInfo.endCursor;
    }
    expect(pages).toBe(5);
    expect(seen).toEqual(Array.from({ length: count }, (_, index) => `TW-P${String(index + 1).padStart(2, '0')}`));
  });

  it('has no further page exactly at the end', async () => {
    const exact = (await technician.data(page, { first: count })).readyBoard;
    expect(exact.pageInfo.hasNextPage).toBe(false);
    const short = (await technician.data(page, { first: count - 1 })).readyBoard;
    expect(short.pageInfo.hasNextPage).toBe(true);
  });

  it('gives an empty page for none', async () => {
    const none = (await technician.data(page, { first: 0 })).readyBoard;
    expect(none).toMatchObject({
      totalCount: count,
      edges: [],
      pageInfo: { hasNextPage: true, startCursor: null, endCursor: null },
    });
  });

  it.each([
    ['first', { first: -1 }],
    ['first', { first: 501 }],
    ['after', { after: 'not a cursor' }],
    ['after', { after: Buffer.from('["only one"]').toString('base64url') }],
  ])('refuses a bad %s', async (field, variables) => {
    expect(await technician.problem(page, variables)).toMatchObject({ code: 'BAD_INPUT', field });
  });

  it('pages findings, due items and history alike', async () => {
    const inPages = async (first: number): Promise<{ readonly ids: string[]; readonly total: number }> => {
      const ids: string[] = [];
      let after: string | null = null;
      for (;;) {
        const { findings }: Data = await technician.data(
          'query ($first: Int, $after: String) { findings(first: $first, after: $after) { totalCount pageInfo { hasNextPage endCursor } edges { node { id } } } }',
          { first, after },
        );
        ids.push(...findings.edges.map((edge: Data) => edge.node.id));
        if (!findings.pageInfo.hasNextPage) return { ids, total: findings.totalCount };
        after = findings.pageInfo.endCursor;
      }
    };
    const large = await inPages(500);
    expect(new Set(large.ids).size).toBe(large.total);
    expect(await inPages(37)).toEqual(large);
    const entries =
      'query ($after: String) { aircraft(id: "page-01") { history(first: 2, after: $after) { totalCount pageInfo { hasNextPage endCursor } edges { node { number } } } } }';
    const first = (await technician.data(entries)).aircraft.history;
    const second = (await technician.data(entries, { after: first.pageInfo.endCursor })).aircraft.history;
    expect([...first.edges, ...second.edges].map((edge: Data) => edge.node.number)).toEqual([3, 2, 1]);
    expect([first.pageInfo.hasNextPage, second.pageInfo.hasNextPage]).toEqual([true, false]);
  });
});

describe('ready board', () => {
  it('changes by itself when a hold ends', async () => {
    const at = async (instant: string | null): Promise<string[]> => {
      const { readyBoard }: Data = await technician.data(
        'query ($at: Instant) { readyBoard(profile: "vfr-cross-country", at: $at, filter: { baseId: "pages" }, first: 500) { edges { node { verdicts { standing changesAt } } } } }',
        { at: instant },
      );
      return readyBoard.edges.map((edge: Data) => edge.node.verdicts[0].standing);
    };
    const held = (standings: string[]): number => standings.filter((standing) => standing === 'HELD').length;
    expect(held(await at(null))).toBe(11);
    expect(held(await at(`${daysAgo(-30)}T11:59Z`))).toBe(11);
    expect(held(await at(`${daysAgo(-30)}T12:00Z`))).toBe(0);
  });

  it('judges a flight at its end and through it', async () => {
    const ask = (at: string, hoursAhead: number): Promise<Data> =>
      technician.data(
        'query ($at: Instant, $hours: Float) { aircraft(id: "page-02") { verdicts(at: $at, hoursAhead: $hours) { standing } } }',
        { at, hours: hoursAhead },
      );
    // The hold ends at noon: a flight that begins before has met it.
    expect((await ask(`${daysAgo(-30)}T11:00Z`, 2)).aircraft.verdicts[0].standing).toBe('HELD');
    expect((await ask(`${daysAgo(-30)}T12:00Z`, 2)).aircraft.verdicts[0].standing).not.toBe('HELD');
  });

  it('counts the whole filter and agrees with the rows', async () => {
    const { readyBoard }: Data = await technician.data(
      '{ readyBoard(first: 500, filter: { baseId: "pages" }) { profiles { id } counts { profile { id } yes no cannotTell judgingAgain } edges { node { verdicts { ready } } } } }',
    );
    expect(readyBoard.profiles.length).toBeGreaterThan(3);
    readyBoard.counts.forEach((counted: Data, column: number) => {
      const words = readyBoard.edges.map((edge: Data) => edge.node.verdicts[column].ready);
      const times = (word: string): number => words.filter((each: string) => each === word).length;
      expect(counted).toMatchObject({
        profile: readyBoard.profiles[column],
        yes: times('YES'),
        no: times('NO'),
        judgingAgain: 0,
      });
      expect(counted.cannotTell).toBe(times('CANNOT_TELL'));
    });
  });

  it('filters by text and by answer', async () => {
    const ask = (filter: string): Promise<Data> =>
      technician.data(
        `{ readyBoard(profile: "vfr-cross-country", filter: ${filter}, first: 500) { totalCount edges { node { aircraft { registration } verdicts { ready } } } } }`,
      );
    expect((await ask('{ text: "p07" }')).readyBoard).toMatchObject({
      totalCount: 1,
      edges: [{ node: { aircraft: { registration: 'TW-P07' } } }],
    });
    expect((await ask('{ text: "PAGEANT" }')).readyBoard.totalCount).toBe(count);
    expect((await ask('{ text: "100%" }')).readyBoard.totalCount).toBe(0);
    const no = (await ask('{ baseId: "pages", ready: [NO] }')).readyBoard;
    expect(no.edges).toHaveLength(no.totalCount);
    expect(no.totalCount).toBeGreaterThanOrEqual(11);
    expect(no.edges.every((edge: Data) => edge.node.verdicts[0].ready === 'NO')).toBe(true);
    expect(await technician.problem('{ readyBoard(filter: { ready: [YES] }) { totalCount } }')).toMatchObject({
      code: 'BAD_INPUT',
      field: 'filter.ready',
    });
    expect(await technician.problem('{ readyBoard(profile: "nothing") { totalCount } }')).toMatchObject({
      code: 'NOT_FOUND',
      field: 'profile',
    });
    expect(await technician.problem('{ readyBoard(hoursAhead: -1) { totalCount } }')).toMatchObject({
      code: 'BAD_INPUT',
      field: 'hoursAhead',
    });
    expect(
      await technician.problem('query ($at: Instant) { readyBoard(at: $at) { totalCount } }', {
        at: '2026-02-30T00:00Z',
      }),
    ).toMatchObject({ code: 'BAD_INPUT', field: 'at' });
  });
});

describe('a verdict with an old stamp', () => {
  it('is shown as being judged again, its yes never as yes, until it is', async () => {
    const opened = await openDatabase(readSettings({ DATA_DIR: shared.dataDir }), () => undefined);
    const scope = { organisationId: 'shop-two' };
    const board =
      '{ readyBoard(profile: "vfr-cross-country", filter: { text: "TW-P03" }) { counts { yes cannotTell judgingAgain } edges { node { verdicts { ready judgingAgain } } } } }';
    try {
      // A yes as an earlier version of the rules might have left it.
      await opened.database.withOrganisation(scope, async (connection) => {
        await connection.query(
          `update ready_windows set ready = 'yes', standing = 'judged' where organisation_id = 'shop-two' and aircraft_id = 'page-03' and profile_id = 'vfr-cross-country'`,
        );
      });
      expect((await manager.data(board)).readyBoard).toMatchObject({
        counts: [{ yes: 1, judgingAgain: 0 }],
        edges: [{ node: { verdicts: [{ ready: 'YES', judgingAgain: false }] } }],
      });
      await opened.database.withOrganisation(scope, async (connection) => {
        await connection.query(
          `update aircraft set rules_version = '2020.01.01' where organisation_id = 'shop-two' and id = 'page-03'`,
        );
      });
      expect((await manager.data(board)).readyBoard).toMatchObject({
        counts: [{ yes: 0, judgingAgain: 1 }],
        edges: [{ node: { verdicts: [{ ready: 'CANNOT_TELL', judgingAgain: true }] } }],
      });
      // The worker looks round once a minute; this does not wait for it.
      const { judgeSome } = await import('../../apps/api/dist/worker/judge-again.js');
      const { Clock } = await import('../../apps/api/dist/common/clock.js');
      const { AppLog } = await import('../../apps/api/dist/common/logging.js');
      const parts = { database: opened.database, clock: new Clock(), log: new AppLog(() => undefined) };
      while ((await judgeSome(parts, scope.organisationId, () => true)).more);
      const after = (await manager.data(board)).readyBoard;
      expect(after.edges[0].node.verdicts[0].judgingAgain).toBe(false);
      expect(after.counts[0].yes).toBe(0);
    } finally {
      await opened.close();
    }
  });
});

describe('read tables', () => {
  it('are written only where they differ', async () => {
    const opened = await openDatabase(readSettings({ DATA_DIR: shared.dataDir }), () => undefined);
    // The hidden row version tells which rows a transaction has written.
    const versions = (): Promise<{ name: string; key: string; xmin: string }[]> =>
      opened.database.withOrganisation({ organisationId: 'shop-two' }, (connection) =>
        connection.query(
          `select 'window' as name, profile_id || ' ' || n as key, xmin::text from ready_windows where organisation_id = 'shop-two' and aircraft_id = 'page-05'
           union all select 'finding', n::text, xmin::text from findings where organisation_id = 'shop-two' and aircraft_id = 'page-05'`,
        ),
      );
    try {
      const before = await versions();
      expect(before.length).toBeGreaterThan(20);
      const answer = await technician.record('page-05', 3, [readMeter(100_010, `${daysAgo(1)}T12:00Z`)]);
      expect(answer.errors).toBeUndefined();
      const old = new Map(before.map((row) => [`${row.name} ${row.key}`, row.xmin]));
      const after = await versions();
      const written = after.filter((row) => old.get(`${row.name} ${row.key}`) !== row.xmin);
      expect(written.length).toBeLessThan(after.length / 2);
      expect(after.some((row) => old.get(`${row.name} ${row.key}`) === row.xmin)).toBe(true);
    } finally {
      await opened.close();
    }
  });
});
