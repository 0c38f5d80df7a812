import { AsyncLocalStorage } from 'node:async_hooks';
import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { Announcer } from './announcer.js';
import { PrismaClient } from './prisma-client/client.js';
import type { Prisma } from './prisma-client/client.js';

/** On whose behalf a connection is opened. Everything else about the person is the identity part's business. */
export interface OrganisationScope {
  readonly organisationId: string;
}

/** The one connection of a transaction. Nobody can begin, end or leave the transaction. */
export interface Connection {
  /** Something that a screen shows is different after this transaction: whoever has one open is told. */
  houseChanged(): void;
  /** What the verdicts of the organisation rest on is different after this transaction: its aircraft are judged again. */
  judgeAgain(): void;
  query<Row extends pg.QueryResultRow = pg.QueryResultRow>(text: string, values?: readonly unknown[]): Promise<Row[]>;
}

export type Records = Prisma.TransactionClient;

/**
 * The last statement of its transaction: the row stays locked only while the commit itself takes, and whoever holds it waits
 * for nobody.
 */
const COUNT_UP = `insert into house_counters as known (organisation_id, counter) values ($1, 1)
  on conflict (organisation_id) do update set counter = known.counter + 1`;

/** Asks for the worker in the same transaction: it comes exactly if that one lands. */
const JUDGE_AGAIN = 'select tallywing_judge_again()';

/** As for the other door; what the library allows by itself is too little for a start on a busy machine. */
const RECORDS_PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/** The functions of the schema that are asked before an organisation is known, and what each may do. */
const doors = {
  door_members: 'read only',
  door_session: 'read only',
  door_organisations: 'read only',
  door_followers: 'read only',
  door_sign_in_wait: 'read only',
  door_sign_in_failed: 'read write',
  door_sign_in_succeeded: 'read write',
} as const;

const inside = new AsyncLocalStorage<true>();
const organisationId = /^[a-z0-9][a-z0-9-]{0,63}$/;

/**
 * The only way to the database. Both doors open a transaction, put on the application role, set the organisation and
 * hand out the transaction's single connection; a door inside a door is refused, because it would wait for a second
 * connection that the pool may not have.
 */
export class Database {
  private readonly pool: pg.Pool;
  private readonly prisma: PrismaClient;
  private readonly announcer: Announcer;

  constructor(url: string) {
    this.pool = new pg.Pool({
      connectionString: url,
      max: 12,
      connectionTimeoutMillis: 10_000,
      statement_timeout: 60_000,
      lock_timeout: 15_000,
      idle_in_transaction_session_timeout: 120_000,
      types: { getTypeParser },
    });
    // A connection that breaks while idle is replaced by the pool; the next request tells if the server is really gone.
    this.pool.on('error', () => undefined);
    // One that breaks within a transaction, between two questions, would otherwise end the process; the next question tells.
    this.pool.on('connect', (client) => client.on('error', () => undefined));
    this.prisma = new PrismaClient({ adapter: new PrismaPg(this.pool) });
    this.announcer = new Announcer(this.pool);
  }

  /** Runs `work` in one transaction that sees only the organisation's rows; commits when it returns, else rolls back. */
  async withOrganisation<T>(scope: OrganisationScope, work: (connection: Connection) => Promise<T>): Promise<T> {
    return await this.transaction(`begin; ${preamble(scope.organisationId)}`, work, scope.organisationId);
  }

  /** The same through Prisma, for plain records. Never mix the two in one piece of work. */
  async withRecords<T>(scope: OrganisationScope, work: (records: Records) => Promise<T>): Promise<T> {
    refuseNested();
    return await inside.run(true, () =>
      this.prisma.$transaction(async (records) => {
        await records.$executeRawUnsafe(`set local role tallywing_app`);
        await records.$queryRaw`select set_config('tallywing.organisation', ${checked(scope.organisationId)}, true)`;
        return await work(records);
      }, RECORDS_PATIENCE),
    );
  }

  /** Goes through one of the doors that are there before an organisation is known. */
  async askDoor<Row extends pg.QueryResultRow>(door: keyof typeof doors, values: readonly unknown[]): Promise<Row[]> {
    const places = values.map((_, index) => `$${index + 1}`).join(', ');
    return await this.transaction(`begin ${doors[door]}; set local role tallywing_app`, (connection) =>
      connection.query<Row>(`select * from ${door}(${places})`, values),
    );
  }

  /** As the application role but for no organisation at all: for the probe, which must then see nothing. */
  async withoutOrganisation<T>(work: (connection: Connection) => Promise<T>): Promise<T> {
    return await this.transaction('begin read only; set local role tallywing_app', work);
  }

  /** Names of the migrations that this database has, in full. */
  async appliedMigrations(): Promise<string[]> {
    const rows = await this.withoutOrganisation((connection) =>
      connection.query<{ name: string }>(
        'select migration_name as name from _prisma_migrations where finished_at is not null and rolled_back_at is null',
      ),
    );
    return rows.map(({ name }) => name);
  }

  /** Work that waits for a worker, and what of it failed before; null where there is no queue. */
  async queue(): Promise<{ readonly waiting: number; readonly failing: number } | null> {
    return await this.transaction('begin read only', async (connection) => {
      const [known] = await connection.query<{ known: boolean }>(
        `select exists (select from pg_roles where rolname = 'tallywing_queue')
           and exists (select from pg_namespace where nspname = 'tallywing_queue') as known`,
      );
      if (!known?.known) return null;
      await connection.query('set local role tallywing_queue');
      const [row] = await connection.query<{ waiting: number; failing: number }>(
        `select count(*)::int as waiting, count(*) filter (where attempts > 1)::int as failing
         from tallywing_queue.jobs where run_at <= now()`,
      );
      return row ?? null;
    });
  }

  /** How many connections there are, how many of them nobody uses, and how many requests wait for one. */
  connections(): { readonly total: number; readonly idle: number; readonly waiting: number } {
    return { total: this.pool.totalCount, idle: this.pool.idleCount, waiting: this.pool.waitingCount };
  }

  async close(): Promise<void> {
    await this.announcer.close();
    await this.prisma.$disconnect();
    await this.pool.end();
  }

  private async transaction<T>(
    opening: string,
    work: (connection: Connection) => Promise<T>,
    organisationId: string | null = null,
  ): Promise<T> {
    refuseNested();
    const client = await this.pool.connect();
    let broken: Error | undefined;
    let changed = false;
    let again = false;
    try {
      await client.query(opening);
      const connection: Connection = {
        houseChanged: () => {
          changed = true;
        },
        judgeAgain: () => {
          again = true;
        },
        query: async <Row extends pg.QueryResultRow>(text: string, values: readonly unknown[] = []) =>
          (await client.query<Row>(text, values as unknown[])).rows,
      };
      const answer = await inside.run(true, () => work(connection));
      if (again) await client.query(JUDGE_AGAIN);
      if (changed && organisationId !== null) await client.query(COUNT_UP, [organisationId]);
      await client.query('commit');
      if (changed && organisationId !== null) this.announcer.add(organisationId);
      return answer;
    } catch (error) {
      await client.query('rollback').catch((reason: unknown) => {
        broken = reason as Error; // The connection itself is gone: it must not go back to the pool.
      });
      throw error;
    } finally {
      client.release(broken);
    }
  }
}

function refuseNested(): void {
  if (inside.getStore())
    throw new Error('A database door was opened inside another. Pass the open connection on instead.');
}

function checked(id: string): string {
  if (!organisationId.test(id)) throw new Error('Not an organisation id.');
  return id;
}

/** Safe to write into the statement: the id has just been checked against a pattern without quotes. */
function preamble(id: string): string {
  return `set local role tallywing_app; set local tallywing.organisation = '${checked(id)}'`;
}

/** Dates stay civil dates as text (a Date would move them by the machine's zone); big integers stay exact as text. */
function getTypeParser(oid: number, format?: 'text' | 'binary'): (value: string) => unknown {
  if (format !== 'binary' && (oid === pg.types.builtins.DATE || oid === pg.types.builtins.INT8))
    return (value) => value;
  return pg.types.getTypeParser(oid, format ?? 'text') as (value: string) => unknown;
}
