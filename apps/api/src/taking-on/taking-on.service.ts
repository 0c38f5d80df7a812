import { setImmediate } from 'node:timers/promises';
import { gapsOf } from '@tallywing/rules';
import { AircraftData, dossierOf, typeIdsOf } from '../aircraft/aircraft.data.js';
import { placedNames } from '../aircraft/names.js';
import { instantOf } from '../common/clock.js';
import type { Clock } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import type { AircraftFilter } from '../fleet/ask.js';
import { summaryOf } from '../fleet/summaries.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { gapKey, gapRows, gapTotals } from './taking-on.data.js';

/** What settles most is searched for anew for each aircraft of a page, so that a page is kept short. */
const MOST_AT_ONCE = 25;
const USUAL = 10;

/** The first hour with an aircraft or a fleet: what cannot be told yet, and what would settle most of it. */
export class TakingOnService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /** @throws AppError BAD_INPUT */
  async fleet(
    actor: Actor | null,
    ask: { filter?: AircraftFilter | null; first?: number | null; after?: string | null },
  ) {
    authorise(actor, 'aircraft.dossier');
    const page = readPage(ask.first ?? USUAL, ask.after, ['number', 'number', 'text', 'text']);
    if (page.first > MOST_AT_ONCE)
      throw badInput('first', `A page holds 0 to ${MOST_AT_ONCE} aircraft.`, 'Ask for less and go on from endCursor.');
    const now = instantOf(this.clock.now());
    return await this.database.withOrganisation(actor, async (connection) => {
      const rows = await gapRows(connection, actor, ask.filter, now, page);
      const { total, told, openAnswers } = await gapTotals(connection, actor, ask.filter, now);
      const connected = connectionOf(page, rows, total, gapKey, (row) => ({
        aircraft: summaryOf(row),
        openAnswers: row.open_answers,
        openFlights: row.open_flights,
      }));
      return { ...connected, told, openAnswers };
    });
  }

  /** Where to go for what is missing on one aircraft; nothing where it does not exist for this person. */
  async visits(actor: Actor | null, aircraftId: string) {
    authorise(actor, 'aircraft.dossier');
    const found = await this.database.withOrganisation(actor, async (connection) => {
      const data = new AircraftData(connection, actor.organisationId);
      const row = await data.find(actor, aircraftId);
      if (!row) return null;
      const dossier = dossierOf(row);
      return { dossier, catalogue: await data.catalogueFor(typeIdsOf(dossier)), profiles: await data.profiles() };
    });
    if (!found) return [];
    const { dossier, catalogue, profiles } = found;
    // Other requests get their turn between two aircraft of a page.
    await setImmediate();
    const { visits } = gapsOf(dossier, catalogue, { instant: instantOf(this.clock.now()) }, profiles);
    const names = placedNames(dossier.configuration);
    return visits.map(({ visit, facts, opens, settles }) => ({
      visit,
      names,
      facts: facts.map(({ fact, opens: flights, settles: keys }) => ({
        fact,
        opens: flights.length,
        settles: keys.length,
      })),
      opens: profiles.filter(({ id }) => opens.includes(id)),
      settles: settles.length,
    }));
  }
}
