import { setImmediate as othersFirst } from 'node:timers/promises';
import { unknownPairFamilies } from '@tallywing/rules';
import type { EquipmentType } from '@tallywing/rules';
import { AircraftData, dossierOf, typeIdsOf } from '../aircraft/aircraft.data.js';
import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { summaryOf } from '../fleet/summaries.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { admitEntry, readBody } from './admission.js';
import { aircraftWith, knownFamilies, typeById, versionsOf } from './catalogue.data.js';
import { MOST_AIRCRAFT, moveOf, unitNode, unitsToMove } from './moves.js';

/** What a version of an entry means for the aircraft that have the product, asked before anything is saved or moved. */
export class MovesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /** @throws AppError as `enter` and `revise` of the catalogue would */
  async preview(actor: Actor | null, input: { readonly body: unknown; readonly expectedId?: string | null }) {
    authorise(actor, 'catalogue.write');
    const entry = readBody(input.body);
    const { type, known, affected } = await this.database.withOrganisation(actor, async (connection) => {
      const { type, versions } = await admitEntry(connection, actor, entry, input.expectedId ?? null);
      const families = entry.pairs.map(({ family }) => family);
      return {
        type,
        known: await knownFamilies(connection, actor.organisationId, families),
        affected: await this.load(
          connection,
          actor,
          versions.map(({ id }) => id),
        ),
      };
    });
    return {
      remarks: unknownPairFamilies(entry, known).map(({ field, family }) => ({
        field,
        text: `The catalogue has no product of the short name ${family}: this pair counts once it is entered.`,
      })),
      effect: await this.effect(affected, type),
    };
  }

  async movingTo(actor: Actor | null, typeId: string) {
    authorise(actor, 'catalogue.write');
    const { type, affected } = await this.database.withOrganisation(actor, async (connection) => {
      const row = await typeById(connection, actor.organisationId, typeId);
      if (row === null) throw new AppError({ code: 'NOT_FOUND', what: 'catalogue entry', field: 'typeId' });
      const versions = await versionsOf(connection, actor.organisationId, row.family);
      const others = versions.map(({ id }) => id).filter((id) => id !== typeId);
      return { type: row.body, affected: await this.load(connection, actor, others) };
    });
    return await this.effect(affected, type);
  }

  private async load(connection: Connection, actor: Actor, versions: readonly string[]) {
    const data = new AircraftData(connection, actor.organisationId);
    const { total, rows } = await aircraftWith(connection, actor, versions, MOST_AIRCRAFT);
    const aircraft = rows.map((row) => ({ summary: summaryOf(row), dossier: dossierOf(row) }));
    return {
      total,
      aircraft,
      versions: new Set(versions),
      catalogue: await data.catalogueFor(aircraft.flatMap(({ dossier }) => typeIdsOf(dossier))),
      profiles: await data.profiles(),
    };
  }

  /** After the connection is given back: a large fleet takes seconds, and lets other requests through between two aircraft. */
  private async effect({ total, aircraft, versions, catalogue, profiles }: Loaded, to: EquipmentType) {
    const instant = instantOf(this.clock.now());
    const moves = [];
    for (const { summary, dossier } of aircraft) {
      await othersFirst();
      const units = unitsToMove(dossier, versions, to.id);
      moves.push({
        aircraft: summary,
        units: units.map((unit) => unitNode(summary, unit)),
        ...moveOf(dossier, catalogue, to, units, profiles, instant),
      });
    }
    return { total, aircraft: moves };
  }
}

type Loaded = Awaited<ReturnType<MovesService['load']>>;
