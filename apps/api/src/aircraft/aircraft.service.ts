import {
  assess,
  codeWords,
  explainResult,
  findOut,
  horizon,
  labourOf,
  messageOf,
  timeline,
  wayBack,
} from '@tallywing/rules';
import type { Catalogue, Dossier } from '@tallywing/rules';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { readMoment } from '../fleet/ask.js';
import { cellsFor, isStale } from '../fleet/board.data.js';
import { databases, loadNodes } from '../fleet/databases.data.js';
import { dueItems, dueNode } from '../fleet/due.data.js';
import { findingNode, openFindings } from '../fleet/findings.data.js';
import { authorise, mayDo } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { currentLabour } from '../labour/labour.data.js';
import { AircraftData, dossierOf, typeIdsOf } from './aircraft.data.js';
import type { AircraftRow } from './aircraft.data.js';
import { stampOf } from './stamp.js';
import type { Profile } from './stamp.js';
import { ruleOf, splitKey, subjectName, wordsIn } from './words.js';

/** So that one question does not hold up the others: a few hundred states take about a second. */
const SEARCH = { states: 800, paths: 3 } as const;
const EVERYTHING = { first: 10_000, after: null } as const;

/** Questions about one aircraft. What lists need comes from the read tables, what one reader asks is computed from the dossier. */
export class AircraftService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async find(actor: Actor | null, id: string): Promise<AircraftRow | null> {
    authorise(actor, 'aircraft.read');
    return await this.database.withOrganisation(actor, (connection) =>
      new AircraftData(connection, actor.organisationId).find(actor, id),
    );
  }

  async verdicts(actor: Actor | null, row: AircraftRow, at?: string | null, hoursAhead?: number | null) {
    authorise(actor, 'aircraft.read');
    const moment = readMoment(this.clock, at, hoursAhead);
    return await this.database.withOrganisation(actor, async (connection) => {
      const data = new AircraftData(connection, actor.organisationId);
      const profiles = await data.profiles();
      const cells = await cellsFor(
        connection,
        actor.organisationId,
        profiles,
        [{ aircraft_id: row.id, ...row }],
        moment,
        stampOf(profiles, await data.policies()),
      );
      return cells.get(row.id) ?? [];
    });
  }

  async judgingAgain(actor: Actor | null, row: AircraftRow): Promise<boolean> {
    authorise(actor, 'aircraft.read');
    return await this.read(actor, async (_, data) =>
      isStale(row, stampOf(await data.profiles(), await data.policies())),
    );
  }

  async profiles(actor: Actor | null): Promise<Profile[]> {
    authorise(actor, 'aircraft.read');
    return await this.database.withOrganisation(actor, (connection) =>
      new AircraftData(connection, actor.organisationId).profiles(),
    );
  }

  async house(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    return await this.database.withOrganisation(actor, async (connection) => {
      const [operator] = await connection.query<{ id: string; name: string }>(
        'select id, name from operators where organisation_id = $1 and id = $2',
        [actor.organisationId, row.operator_id],
      );
      return operator ?? null;
    });
  }

  /** The coming twelve months for one profile, along the recorded use, as if meters will be read in time. */
  async line(actor: Actor | null, row: AircraftRow, profileId: string) {
    const { dossier, catalogue, profiles } = await this.load(actor, row);
    const profile = named(profiles, profileId);
    const now = this.clock.now();
    const from = instantOf(now);
    const to = instantOf(new Date(Date.UTC(now.getUTCFullYear() + 1, now.getUTCMonth(), now.getUTCDate())));
    const stretches = timeline(
      horizon(dossier, catalogue, from, to, profile.conditions, true),
      dossier.meters.utilisation.perMonth,
    );
    const words = wordsAt(dossier, catalogue, profile);
    return stretches.map((each) => ({
      ...each,
      because: each.because.map((key) => words(each.from, key)),
      endsBecause: each.endsBecause.map((key) => words(each.to, key)),
    }));
  }

  async findings(actor: Actor | null, row: AircraftRow, at?: string | null, hoursAhead?: number | null) {
    authorise(actor, 'aircraft.read');
    const moment = readMoment(this.clock, at, hoursAhead);
    return await this.read(actor, async (connection) =>
      (await openFindings(connection, actor, { aircraftId: row.id }, moment, EVERYTHING)).map(findingNode),
    );
  }

  async reason(
    actor: Actor | null,
    row: AircraftRow,
    key: string,
    profileId?: string | null,
    at?: string | null,
    hoursAhead?: number | null,
  ) {
    const { dossier, catalogue, profiles } = await this.load(actor, row);
    const conditions = profileId ? named(profiles, profileId).conditions : profiles[0]?.conditions;
    const asked = readMoment(this.clock, at, hoursAhead);
    const moment = { instant: asked.from, to: asked.to, hoursAhead: asked.hours };
    const explained = explainResult(dossier, catalogue, moment, key, conditions);
    const result = assess(dossier, catalogue, moment, conditions).results.find((each) => each.key === key);
    const rule = ruleOf(splitKey(key).ruleId);
    if (!explained || !result || !rule) return null;
    return {
      key,
      ruleId: result.ruleId,
      topic: rule.topic,
      subject: result.subject,
      outcome: result.outcome,
      text: messageOf(result, wordsIn(dossier)),
      asks: rule.asks,
      clause: explained,
      changesAt: result.changesAt ?? null,
      hoursLeft: result.hoursLeft === undefined ? null : result.hoursLeft / 100,
      remedies: result.remedies,
    };
  }

  async findOut(actor: Actor | null, row: AircraftRow, profileId?: string | null) {
    const { dossier, catalogue, profiles } = await this.load(actor, row);
    const conditions = profileId ? named(profiles, profileId).conditions : profiles[0]?.conditions;
    return findOut(dossier, catalogue, { instant: instantOf(this.clock.now()) }, conditions);
  }

  /** Over the whole catalogue of the house, since a way may fit what the aircraft does not have. */
  async wayBack(
    actor: Actor | null,
    row: AircraftRow,
    profileId: string,
    at?: string | null,
    hoursAhead?: number | null,
  ) {
    authorise(actor, 'aircraft.read');
    const dossier = dossierOf(row);
    const { catalogue, profiles, labour } = await this.read(actor, async (connection, data) => ({
      labour: (await currentLabour(connection, actor.organisationId)).body,
      catalogue: await data.currentCatalogue(typeIdsOf(dossier)),
      profiles: await data.profiles(),
    }));
    const { conditions } = named(profiles, profileId);
    const asked = readMoment(this.clock, at, hoursAhead);
    const moment = { instant: asked.from, to: asked.to, hoursAhead: asked.hours };
    const { now, ways, complete } = wayBack(dossier, catalogue, moment, conditions, labourOf(labour), SEARCH);
    const nameOf = (id: string) => catalogue.types[id]?.name ?? subjectName(dossier, id);
    return {
      now,
      complete,
      currency: labour.currency,
      ways: ways.map(({ steps, then, ...way }) => ({
        ...way,
        steps: steps.map((each) => ({ ...each, subjects: each.change === null ? [] : each.subjects.map(nameOf) })),
        changesAt: then.changesAt ?? null,
        hoursLeft: then.hoursLeft === undefined ? null : then.hoursLeft / 100,
      })),
    };
  }

  async due(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    return await this.read(actor, async (connection) =>
      (await dueItems(connection, actor, { aircraftId: row.id }, { from: null, to: null }, EVERYTHING)).map(dueNode),
    );
  }

  async databases(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    return await this.read(actor, async (connection) =>
      (await databases(connection, actor, { aircraftId: row.id }, EVERYTHING)).flatMap(loadNodes),
    );
  }

  /** Everything recorded; null for roles that may not see names of staff and certificates. */
  async dossier(actor: Actor | null, row: AircraftRow): Promise<Dossier | null> {
    authorise(actor, 'aircraft.read');
    return mayDo(actor, 'aircraft.dossier') ? dossierOf(row) : null;
  }

  async catalogue(actor: Actor | null, row: AircraftRow): Promise<Catalogue> {
    return (await this.load(actor, row)).catalogue;
  }

  private async load(actor: Actor | null, row: AircraftRow) {
    authorise(actor, 'aircraft.read');
    const dossier = dossierOf(row);
    return await this.read(actor, async (_, data) => ({
      dossier,
      catalogue: await data.catalogueFor(typeIdsOf(dossier)),
      profiles: await data.profiles(),
    }));
  }

  private async read<T>(actor: Actor, work: (connection: Connection, data: AircraftData) => Promise<T>): Promise<T> {
    return await this.database.withOrganisation(actor, (connection) =>
      work(connection, new AircraftData(connection, actor.organisationId)),
    );
  }
}

function named(profiles: readonly Profile[], id: string): Profile {
  const found = profiles.find((profile) => profile.id === id);
  if (!found) throw new AppError({ code: 'NOT_FOUND', what: 'flight profile', field: 'profile' });
  return found;
}

/** Words of results at the instants asked for; each instant is judged once. */
function wordsAt(dossier: Dossier, catalogue: Catalogue, profile: Profile) {
  const made = new Map<string, ReturnType<typeof assess>['results']>();
  const words = wordsIn(dossier);
  return (instant: string, key: string) => {
    const results = made.get(instant) ?? assess(dossier, catalogue, { instant }, profile.conditions).results;
    made.set(instant, results);
    const result = results.find((each) => each.key === key);
    const { ruleId, subject } = splitKey(key);
    return {
      key,
      ruleId,
      subject,
      text: result ? messageOf(result, words) : codeWords(ruleId),
      effect: null,
    };
  };
}
