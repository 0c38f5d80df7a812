import { equipmentType } from '@tallywing/rules';
import type { EquipmentType } from '@tallywing/rules';
import { equipmentTypeId } from '../aircraft/stamp.js';
import type { Clock } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { AppError } from '../common/errors.js';
import type { Refusal } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { addTypes, countTypes, currentTypes, typeById } from './catalogue.data.js';
import type { CatalogueFilter, TypeRow } from './catalogue.data.js';

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
    const page = readPage(ask.first, ask.after, 3);
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

  /**
   * Adds entries; ids are computed here.
   * @returns the entries as they are stored
   * @throws AppError REFUSED naming each bad field of each entry
   */
  async add(actor: Actor | null, bodies: readonly unknown[]): Promise<readonly EquipmentType[]> {
    authorise(actor, 'catalogue.write');
    const types = readTypes(bodies);
    await this.database.withOrganisation(actor, (connection) =>
      addTypes(connection, actor.organisationId, types, this.clock.now()),
    );
    return types;
  }
}

/** Reads unknown values as catalogue entries and gives each its id. @throws AppError REFUSED */
export function readTypes(bodies: readonly unknown[]): readonly EquipmentType[] {
  const refusals: Refusal[] = [];
  const types: EquipmentType[] = [];
  bodies.forEach((body, index) => {
    const read = equipmentType.strict().safeParse({ ...(typeof body === 'object' ? body : {}), id: 'to be computed' });
    if (read.success) {
      const { id: _placeholder, ...content } = read.data;
      types.push({ id: equipmentTypeId(content), ...content });
      return;
    }
    refusals.push(
      ...read.error.issues.map((issue) => ({
        change: index,
        code: 'malformed',
        field: issue.path.join('.'),
        message: `${issue.path.join('.') || 'entry'}: ${issue.message}`,
        wayOut: 'Correct the field and send it again.',
      })),
    );
  });
  if (refusals.length > 0) throw new AppError({ code: 'REFUSED', refusals });
  return types;
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
    body: row.body,
  };
}
