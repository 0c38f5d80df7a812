import type { Database } from './database.js';

/**
 * Looks, as the application does, for anything that would let one organisation see another: a role that bypasses row
 * policies, a table without a forced policy, a row visible to nobody or to a stranger.
 * @returns what is wrong, empty when nothing is
 */
export async function probe(database: Database): Promise<readonly string[]> {
  return await database.withoutOrganisation(async (connection) => {
    const found: string[] = [];
    const [role] = await connection.query<{ name: string; super: boolean; bypass: boolean }>(
      'select rolname as name, rolsuper as super, rolbypassrls as bypass from pg_roles where rolname = current_user',
    );
    if (role === undefined || role.super || role.bypass) found.push('the application role may bypass row policies');
    const tables = await connection.query<{ name: string; open: boolean }>(
      `select c.relname as name, not (c.relrowsecurity and c.relforcerowsecurity) as open
       from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attname = 'organisation_id' and not a.attisdropped
       where c.relkind in ('r', 'p') and c.relnamespace = 'public'::regnamespace order by 1`,
    );
    if (tables.length === 0) found.push('the tables are missing');
    for (const table of tables) if (table.open) found.push(`table ${table.name} has no forced row policy`);
    const looks = tables
      .map((table) => `select '${table.name}' as name where exists (select 1 from "${table.name}")`)
      .join(' union all ');
    for (const setting of ['', 'no-such-organisation']) {
      await connection.query(`select set_config('tallywing.organisation', $1, true)`, [setting]);
      for (const row of looks === '' ? [] : await connection.query<{ name: string }>(looks)) {
        found.push(`a row of ${row.name} is visible to ${setting === '' ? 'nobody in particular' : 'a stranger'}`);
      }
    }
    return found;
  });
}
