import { stampOf } from '../aircraft/stamp.js';
import type { Profile } from '../aircraft/stamp.js';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { AppError, badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { housePolicies } from '../house/policies.data.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { readMoment } from './ask.js';
import type { AircraftFilter } from './ask.js';
import { boardCounts, boardPage, cellsFor } from './board.data.js';
import { countDatabases, currencyNode, databaseKey, databases } from './databases.data.js';
import { countDue, dueByWeek, dueItems, dueKey, dueNode } from './due.data.js';
import type { DueFilter } from './due.data.js';
import { countByEffect, findingKey, findingNode, lapsedBetween, openFindings } from './findings.data.js';
import type { FindingFilter } from './findings.data.js';
import { bases, findingWeeks, operators, recordedSince, wantedProfiles } from './house.data.js';
import { judging } from './judging.data.js';
import type { Judging } from './judging.data.js';
import { countAircraft, meterKey, meterNode, meterRows } from './meters.data.js';
import { noticeNode, noticesSince } from './notices.data.js';
import { summaryOf } from './summaries.js';

export interface Paged {
  readonly first?: number | null;
  readonly after?: string | null;
}

const DAYS_AHEAD = 90;
const MOST_WEEKS = 104;

/** Questions to the whole fleet. Reads only; everything is answered from the read tables. */
export class FleetService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async board(
    actor: Actor | null,
    ask: {
      profile?: string | null;
      at?: string | null;
      hoursAhead?: number | null;
      filter?: AircraftFilter | null;
    } & Paged,
  ) {
    authorise(actor, 'fleet.read');
    const moment = readMoment(this.clock, ask.at, ask.hoursAhead);
    const page = readPage(ask.first, ask.after, ['text', 'text']);
    if (ask.filter?.ready && !ask.profile) {
      throw badInput(
        'filter.ready',
        'Ready for what? The filter needs a profile.',
        'Name a profile, or leave the filter out.',
      );
    }
    return await this.database.withOrganisation(actor, async (connection) => {
      const all = await wantedProfiles(connection, actor.organisationId);
      const profiles = ask.profile ? [named(all, ask.profile)] : all;
      const stamp = stampOf(all, await housePolicies(connection, actor.organisationId));
      const rows = await boardPage(
        connection,
        actor,
        ask.profile ? (profiles[0] ?? null) : null,
        ask.filter,
        moment,
        stamp,
        page,
      );
      const cells = await cellsFor(
        connection,
        actor.organisationId,
        profiles,
        rows.slice(0, page.first),
        moment,
        stamp,
      );
      const { total, counts } = await boardCounts(connection, actor, profiles, ask.filter, moment, stamp);
      const wanted = ask.filter?.ready;
      const totalCount = wanted && counts[0] ? countOf(counts[0], wanted) : total;
      return {
        at: moment.from,
        hoursAhead: moment.hours / 100,
        profiles,
        counts,
        ...connectionOf(
          page,
          rows,
          totalCount,
          (row) => [row.registration, row.aircraft_id],
          (row) => ({ aircraft: summaryOf(row), revision: row.revision, verdicts: cells.get(row.aircraft_id) ?? [] }),
        ),
      };
    });
  }

  async findings(
    actor: Actor | null,
    ask: { filter?: FindingFilter | null; at?: string | null; hoursAhead?: number | null } & Paged,
  ) {
    authorise(actor, 'fleet.read');
    const moment = readMoment(this.clock, ask.at, ask.hoursAhead);
    const page = readPage(ask.first, ask.after, ['number', 'text', 'text', 'number']);
    return await this.database.withOrganisation(actor, async (connection) => {
      const rows = await openFindings(connection, actor, ask.filter, moment, page);
      const byEffect = await countByEffect(connection, actor, ask.filter, moment);
      const total = byEffect.reduce((sum, each) => sum + each.count, 0);
      return { ...connectionOf(page, rows, total, findingKey, findingNode), byEffect };
    });
  }

  async dueAhead(
    actor: Actor | null,
    ask: { from?: string | null; to?: string | null; filter?: DueFilter | null } & Paged,
  ) {
    authorise(actor, 'fleet.read');
    const page = readPage(ask.first, ask.after, ['instant', 'text', 'text', 'number']);
    const span = this.span(ask);
    return await this.database.withOrganisation(actor, async (connection) =>
      connectionOf(
        page,
        await dueItems(connection, actor, ask.filter, span, page),
        await countDue(connection, actor, ask.filter, span),
        dueKey,
        dueNode,
      ),
    );
  }

  async dueByWeek(actor: Actor | null, ask: { from?: string | null; to?: string | null; filter?: DueFilter | null }) {
    authorise(actor, 'fleet.read');
    const span = this.span(ask);
    return await this.database.withOrganisation(actor, (connection) => dueByWeek(connection, actor, ask.filter, span));
  }

  async databaseCurrency(actor: Actor | null, ask: { at?: string | null; filter?: AircraftFilter | null } & Paged) {
    authorise(actor, 'fleet.read');
    const { from } = readMoment(this.clock, ask.at, 0);
    const page = readPage(ask.first, ask.after, ['text', 'text', 'text', 'text']);
    return await this.database.withOrganisation(actor, async (connection) =>
      connectionOf(
        page,
        await databases(connection, actor, ask.filter, page),
        await countDatabases(connection, actor, ask.filter),
        databaseKey,
        (row) => currencyNode(row, from),
      ),
    );
  }

  async meterSheet(actor: Actor | null, ask: { filter?: AircraftFilter | null } & Paged) {
    authorise(actor, 'fleet.read');
    const page = readPage(ask.first, ask.after, ['text', 'text']);
    return await this.database.withOrganisation(actor, async (connection) => {
      const policies = await housePolicies(connection, actor.organisationId);
      const now = instantOf(this.clock.now());
      return connectionOf(
        page,
        await meterRows(connection, actor, ask.filter, page),
        await countAircraft(connection, actor, ask.filter),
        meterKey,
        (row) => meterNode(row, policies, now),
      );
    });
  }

  async openFindings(actor: Actor | null, weeksBack: number, weeksAhead: number) {
    authorise(actor, 'fleet.read');
    for (const [field, weeks] of [
      ['weeksBack', weeksBack],
      ['weeksAhead', weeksAhead],
    ] as const) {
      if (weeks < 0 || weeks > MOST_WEEKS)
        throw badInput(field, `Weeks are 0 to ${MOST_WEEKS}.`, 'Ask for fewer weeks.');
    }
    return await this.database.withOrganisation(actor, (connection) =>
      findingWeeks(connection, actor, weeksBack, weeksAhead, this.clock.now()),
    );
  }

  async changesSince(actor: Actor | null, since: string | null) {
    authorise(actor, 'fleet.read');
    const now = this.clock.now();
    const start = since ?? lastWorkingDay(now);
    return await this.database.withOrganisation(actor, async (connection) => {
      const profiles = await wantedProfiles(connection, actor.organisationId);
      const events = await recordedSince(connection, actor, start);
      const aircraft = new Map(events.map((event) => [event.aircraft_id, summaryOf(event)]));
      return {
        since: start,
        recorded: events.length,
        aircraft: [...aircraft.values()],
        byTime: (await noticesSince(connection, actor, start)).flatMap((row) => noticeNode(row, profiles) ?? []),
        lapsed: (await lapsedBetween(connection, actor, start, instantOf(now))).map(findingNode),
        verdicts: events.flatMap((event) =>
          event.verdicts.flatMap((change) => {
            const profile = profiles.find((each) => each.id === change.profileId);
            return profile
              ? [{ aircraft: summaryOf(event), profile, was: change.was, is: change.is, at: instantOf(event.at) }]
              : [];
          }),
        ),
      };
    });
  }

  async judging(actor: Actor | null): Promise<Judging> {
    authorise(actor, 'fleet.read');
    return await this.database.withOrganisation(actor, async (connection) =>
      judging(
        connection,
        actor,
        stampOf(
          await wantedProfiles(connection, actor.organisationId),
          await housePolicies(connection, actor.organisationId),
        ),
      ),
    );
  }

  async profiles(actor: Actor | null): Promise<Profile[]> {
    authorise(actor, 'fleet.read');
    return await this.database.withOrganisation(actor, (connection) =>
      wantedProfiles(connection, actor.organisationId),
    );
  }

  async operators(actor: Actor | null) {
    authorise(actor, 'fleet.read');
    return await this.database.withOrganisation(actor, (connection) => operators(connection, actor));
  }

  async bases(actor: Actor | null) {
    authorise(actor, 'fleet.read');
    return await this.database.withOrganisation(actor, (connection) => bases(connection, actor));
  }

  private span(ask: { from?: string | null; to?: string | null }) {
    const later = new Date(this.clock.now().getTime() + DAYS_AHEAD * 86_400_000);
    const to = ask.to ?? (ask.from ? null : instantOf(later));
    if (ask.from && to !== null && ask.from > to)
      throw badInput('to', 'The end is before the start.', 'Exchange the two.');
    return { from: ask.from ?? null, to };
  }
}

function named(profiles: readonly Profile[], id: string): Profile {
  const found = profiles.find((profile) => profile.id === id);
  if (!found) throw new AppError({ code: 'NOT_FOUND', what: 'flight profile', field: 'profile' });
  return found;
}

function countOf(
  count: { yes: number; no: number; cannotTell: number; judgingAgain: number },
  ready: readonly string[],
): number {
  return (
    (ready.includes('yes') ? count.yes : 0) +
    (ready.includes('no') ? count.no : 0) +
    (ready.includes('cannot-tell') ? count.cannotTell + count.judgingAgain : 0)
  );
}

/** The start (UTC) of the working day before this one; Monday looks back to Friday. */
function lastWorkingDay(now: Date): string {
  const back = ({ 0: 2, 1: 3, 6: 1 } as Readonly<Record<number, number>>)[now.getUTCDay()] ?? 1;
  const day = new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth(), now.getUTCDate() - back));
  return instantOf(day);
}
