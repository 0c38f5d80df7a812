import { canonical } from '../common/canonical.js';
import type { Connection } from '../database/database.js';
import type { Row } from './judge.js';
import { carryOpenings } from './openings.js';

/** A table of things that follow from a dossier. Rows are told apart by content; `n` only keeps them apart in the key. */
interface ReadTable {
  readonly name: 'ready_windows' | 'findings' | 'due_items' | 'unit_databases';
  /** Columns of the key after organisation and aircraft. */
  readonly key: readonly string[];
  readonly columns: readonly string[];
}

const tables: Readonly<Record<'windows' | 'findings' | 'dueItems' | 'databases', ReadTable>> = {
  windows: {
    name: 'ready_windows',
    key: ['profile_id', 'n'],
    columns: [
      'from_at',
      'to_at',
      'above',
      'up_to',
      'ready',
      'standing',
      'by_means',
      'because',
      'top_ft',
      'weakest',
      'changes_at',
      'changes_after',
    ],
  },
  findings: {
    name: 'findings',
    key: ['n'],
    columns: [
      'rule_id',
      'subject',
      'subject_name',
      'opens_at',
      'closes_at',
      'above',
      'up_to',
      'outcome',
      'message_id',
      'data',
      'effect',
      'capabilities',
      'topic',
      'remedies',
    ],
  },
  dueItems: {
    name: 'due_items',
    key: ['n'],
    columns: [
      'rule_id',
      'subject',
      'subject_name',
      'topic',
      'what',
      'effect',
      'due_on',
      'due_at',
      'meter',
      'at_centihours',
      'hours_left',
      'projected_at',
      'expected_at',
      'combine',
      'reading_ends_at',
    ],
  },
  databases: {
    name: 'unit_databases',
    key: ['unit_id', 'database', 'slot'],
    columns: ['unit_name', 'cycle', 'effective_at', 'expires_at'],
  },
};

export interface Written {
  readonly put: number;
  readonly removed: number;
}

export interface TableDifference extends Difference {
  readonly table: ReadTable;
}

/** Where the read tables of one aircraft are not what follows from its dossier; tables that agree are left out. */
export async function differencesIn(
  connection: Connection,
  organisationId: string,
  aircraftId: string,
  judged: Readonly<Record<keyof typeof tables, readonly Row[]>>,
  now: Date,
): Promise<TableDifference[]> {
  const found: TableDifference[] = [];
  for (const [name, table] of Object.entries(tables) as [keyof typeof tables, ReadTable][]) {
    const old = await stored(connection, table, organisationId, aircraftId);
    const wanted = name === 'findings' ? carryOpenings(old, judged.findings, now) : judged[name];
    const difference = compare(table, old, wanted);
    if (difference.put.length + difference.remove.length > 0) found.push({ table, ...difference });
  }
  return found;
}

/**
 * Brings the read tables of one aircraft to what follows from its dossier, writing only what differs.
 * @returns how many rows were written and removed
 */
export async function writeDifferences(
  connection: Connection,
  organisationId: string,
  aircraftId: string,
  judged: Readonly<Record<keyof typeof tables, readonly Row[]>>,
  now: Date,
): Promise<Written> {
  const found = await differencesIn(connection, organisationId, aircraftId, judged, now);
  for (const { table, put, remove } of found) {
    if (remove.length > 0) {
      await connection.query(
        `delete from ${table.name} t using jsonb_to_recordset($3::jsonb) as k(${table.key.map((column) => `${column} ${column === 'n' ? 'int' : 'text'}`).join(', ')})
         where t.organisation_id = $1 and t.aircraft_id = $2 and ${table.key.map((column) => `t.${column} = k.${column}`).join(' and ')}`,
        [organisationId, aircraftId, JSON.stringify(remove)],
      );
    }
    if (put.length > 0) {
      const all = [...table.key, ...table.columns];
      await connection.query(
        `insert into ${table.name} (organisation_id, aircraft_id, ${all.join(', ')})
         select $1, $2, ${all.map((column) => `r.${column}`).join(', ')} from jsonb_populate_recordset(null::${table.name}, $3::jsonb) r
         on conflict (organisation_id, ${table.name === 'ready_windows' ? 'profile_id, aircraft_id, n' : `aircraft_id, ${table.key.join(', ')}`})
         do update set ${table.columns.map((column) => `${column} = excluded.${column}`).join(', ')}`,
        [organisationId, aircraftId, JSON.stringify(put)],
      );
    }
  }
  return {
    put: found.reduce((sum, each) => sum + each.put.length, 0),
    removed: found.reduce((sum, each) => sum + each.remove.length, 0),
  };
}

async function stored(
  connection: Connection,
  table: ReadTable,
  organisationId: string,
  aircraftId: string,
): Promise<Row[]> {
  return await connection.query<Record<string, string | number | null>>(
    `select ${[...table.key, ...table.columns].map((column) => (column.endsWith('_at') ? `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI"Z"') as ${column}` : column)).join(', ')}
     from ${table.name} where organisation_id = $1 and aircraft_id = $2`,
    [organisationId, aircraftId],
  );
}

interface Difference {
  readonly put: readonly Row[];
  readonly remove: readonly Row[];
}

/** Rows equal in content stay where they are; the others take the numbers that became free, then new ones. */
export function compare(
  table: Pick<ReadTable, 'key' | 'columns'>,
  old: readonly Row[],
  wanted: readonly Row[],
): Difference {
  const numbered = table.key.includes('n');
  const named = table.key.filter((column) => column !== 'n');
  const content = (row: Row): string => canonical(pick(row, [...named, ...table.columns]));
  const group = (row: Row): string => canonical(pick(row, named));
  const staying = new Map<string, Row[]>();
  for (const row of old) staying.set(content(row), [...(staying.get(content(row)) ?? []), row]);
  const missing = wanted.filter((row) => staying.get(content(row))?.pop() === undefined);
  const free = new Map<string, Row[]>();
  for (const row of [...staying.values()].flat()) free.set(group(row), [...(free.get(group(row)) ?? []), row]);
  const next = new Map<string, number>();
  for (const row of old) next.set(group(row), Math.max(next.get(group(row)) ?? 0, Number(row['n'] ?? 0) + 1));
  const put = missing.map((row) => {
    const place = free.get(group(row))?.pop();
    if (!numbered) return row;
    if (place) return { ...row, n: place['n'] ?? 0 };
    const n = next.get(group(row)) ?? 0;
    next.set(group(row), n + 1);
    return { ...row, n };
  });
  return { put, remove: [...free.values()].flat().map((row) => pick(row, table.key)) };
}

function pick(row: Row, columns: readonly string[]): Row {
  return Object.fromEntries(columns.map((column) => [column, row[column] ?? null]));
}
