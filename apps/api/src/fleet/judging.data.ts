import type { Stamp } from '../aircraft/stamp.js';
import { Parameters } from '../common/sql.js';
import type { Connection } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { aircraftConditions } from './ask.js';

/** True of an aircraft `a` whose verdicts rest on other rules, zones or profiles than today's. */
export function judgedOtherwise(stamp: Stamp, add: (value: unknown) => string): string {
  return `(a.rules_version, a.zones_version, a.profiles_hash) is distinct from (${add(stamp.rules)}, ${add(stamp.zones)}, ${add(stamp.profiles)})`;
}

export interface Judging {
  readonly aircraft: number;
  readonly judgingAgain: number;
}

/** How many aircraft there are for this actor, and how many of them are being judged again. */
export async function judging(connection: Connection, actor: Actor, stamp: Stamp): Promise<Judging> {
  const parameters = new Parameters();
  const add = (value: unknown): string => parameters.add(value);
  const [row] = await connection.query<{ aircraft: number; judgingAgain: number }>(
    `select count(*)::int as aircraft, count(*) filter (where ${judgedOtherwise(stamp, add)})::int as "judgingAgain"
     from aircraft a where ${aircraftConditions(actor, null, add)}`,
    parameters.values,
  );
  return row ?? { aircraft: 0, judgingAgain: 0 };
}
