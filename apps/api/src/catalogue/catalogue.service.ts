import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { checkKey, keepAnswer, knownAnswer } from '../common/request-keys.data.js';
import type { Connection, Database } from '../database/database.js';
import { summaryOf } from '../fleet/summaries.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { admitEntry, readBody } from './admission.js';
import {
  addTypes,
  aircraftWith,
  countTypes,
  currentTypes,
  lockFamilies,
  typeById,
  versionsOf,
} from './catalogue.data.js';
import type { CatalogueFilter, TypeRow } from './catalogue.data.js';
import { MOST_AIRCRAFT, unitNode } from './moves.js';

/** Equipment types as their manuals describe them: immutable versions, of which one is in force for each product. */
export class CatalogueService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(
    actor: Actor | null,
    ask: { filter?: CatalogueFilter | null; first?: number | null; after?: string | null },
  ) {
    authorise(actor, 'catalogue.read');
    const page = readPage(ask.first, ask.after, ['text', 'text', 'text']);
    return await this.database.withOrganisation(actor, async (connection) =>
      connectionOf(
        page,
        await currentTypes(connection, actor.organisationId, ask.filter, page),
        await countTypes(connection, actor.organisationId, ask.filter),
        (row) => [row.maker, row.name, row.id],
        nodeOf,
      ),
    );
  }

  async find(actor: Actor | null, id: string) {
    authorise(actor, 'catalogue.read');
    const row = await this.database.withOrganisation(actor, (connection) =>
      typeById(connection, actor.organisationId, id),
    );
    return row === null ? null : nodeOf(row);
  }

  async versions(actor: Actor | null, family: string) {
    authorise(actor, 'catalogue.read');
    const rows = await this.database.withOrganisation(actor, (connection) =>
      versionsOf(connection, actor.organisationId, family),
    );
    return rows.map((row) => ({ ...nodeOf(row), current: row.superseded_by === null }));
  }

  /** Units of a product over the fleet, under any version. */
  async fitted(actor: Actor | null, family: string) {
    authorise(actor, 'aircraft.read');
    return await this.database.withOrganisation(actor, async (connection) => {
      const ids = new Set((await versionsOf(connection, actor.organisationId, family)).map(({ id }) => id));
      const { total, rows } = await aircraftWith(connection, actor, [...ids], MOST_AIRCRAFT);
      const units = rows.flatMap((row) =>
        row.configuration.units
          .filter(({ typeId }) => typeId !== null && ids.has(typeId))
          .map((unit) => unitNode(summaryOf(row), unit)),
      );
      return { total, units };
    });
  }

  /** @throws AppError REFUSED naming each bad field or a family that is taken, KEY_REUSED, BAD_INPUT */
  async enter(actor: Actor | null, input: { readonly key: string; readonly body: unknown }) {
    authorise(actor, 'catalogue.write');
    return await this.save(actor, input, null);
  }

  /** @throws AppError as `enter`, STALE_REVISION when the version named is no longer in force, NOT_FOUND */
  async revise(
    actor: Actor | null,
    input: { readonly key: string; readonly body: unknown; readonly expectedId: string },
  ) {
    authorise(actor, 'catalogue.write');
    return await this.save(actor, input, input.expectedId);
  }

  /** A repeated request (same key, same content) gets its first answer; the key is looked at before the version. */
  private async save(
    actor: Actor,
    { key, body }: { readonly key: string; readonly body: unknown },
    expectedId: string | null,
  ) {
    checkKey(key);
    const entry = readBody(body);
    const content = { entry, expectedId };
    return await this.database.withOrganisation(actor, async (connection) => {
      const known = await knownAnswer<{ id: string }>(connection, actor, key, content);
      if (known !== null) return await reread(connection, actor, known.id);
      await lockFamilies(connection, actor.organisationId, [entry.family]);
      const { type } = await admitEntry(connection, actor, entry, expectedId);
      const at = this.clock.now();
      await addTypes(connection, actor, [type], at);
      await keepAnswer(connection, actor, { key, content, aircraftId: null, answer: { id: type.id }, at });
      return await reread(connection, actor, type.id);
    });
  }
}

async function reread(connection: Connection, actor: Actor, id: string) {
  const row = await typeById(connection, actor.organisationId, id);
  if (row === null) throw new Error(`The catalogue entry ${id} was saved and is not there.`);
  return nodeOf(row);
}

function nodeOf(row: TypeRow) {
  const { maker, name, partNumber, document, revision, functions } = row.body;
  return {
    id: row.id,
    family: row.family,
    maker,
    name,
    partNumber,
    document,
    revision,
    functions,
    supersededBy: row.superseded_by,
    enteredAt: instantOf(row.created_at),
    enteredBy: row.entered_by,
    body: row.body,
  };
}
