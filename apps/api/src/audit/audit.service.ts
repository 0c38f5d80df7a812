import { instantOf } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import type { Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { auditRows, countAudit } from './audit.data.js';
import type { AuditAsked, AuditRow } from './audit.data.js';

/** Who did what in the organisation. */
export class AuditService {
  constructor(private readonly database: Database) {}

  async list(
    actor: Actor | null,
    ask: { readonly filter?: AuditAsked | null; readonly first?: number | null; readonly after?: string | null },
  ) {
    authorise(actor, 'audit.read');
    const page = readPage(ask.first, ask.after, ['instant', 'text']);
    const filter = ask.filter ?? {};
    return await this.database.withOrganisation(actor, async (connection) =>
      connectionOf(
        page,
        await auditRows(connection, actor.organisationId, filter, page),
        await countAudit(connection, actor.organisationId, filter),
        (row) => [row.at.toISOString(), row.ref],
        nodeOf,
      ),
    );
  }
}

function nodeOf(row: AuditRow) {
  return {
    id: row.ref,
    at: instantOf(row.at),
    by: row.by,
    topic: row.topic,
    kind: row.kind,
    subject: row.subject_kind === null ? null : { kind: row.subject_kind, id: row.subject_id, name: row.subject_name },
    before: row.before,
    after: row.after,
  };
}
