import type { FlightConditions } from '@tallywing/rules';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { connectionOf, readPage } from '../common/connection.js';
import { AppError } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { checkedConditions, checkedName, checkedZone, idFrom } from './checks.js';
import { changeHouse, countHouseEntries, difference, expectRevision, houseEntries } from './house-entry.data.js';
import type { Done, HouseEntryRow, Subject } from './house-entry.data.js';
import { HouseData } from './house.data.js';
import type { Base, HouseProfile, Operator } from './house.data.js';

interface ProfileInput {
  readonly name: string;
  readonly wanted: boolean;
  readonly conditions: FlightConditions;
}

/** The lists of the organisation, and what was changed about it. */
export class HouseService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async lists(actor: Actor | null) {
    authorise(actor, 'organisation.read');
    return await this.database.withOrganisation(actor, async (connection) => {
      const data = new HouseData(connection, actor.organisationId);
      return { operators: await data.operators(), bases: await data.bases(), profiles: await data.profiles() };
    });
  }

  async entries(actor: Actor | null, ask: { readonly first?: number | null; readonly after?: string | null }) {
    authorise(actor, 'organisation.read');
    const page = readPage(ask.first, ask.after, ['number']);
    return await this.database.withOrganisation(actor, async (connection) =>
      connectionOf(
        page,
        await houseEntries(connection, actor, page),
        await countHouseEntries(connection, actor),
        (row) => [row.id],
        entryNode,
      ),
    );
  }

  async addOperator(actor: Actor | null, input: { readonly name: string }): Promise<Operator> {
    authorise(actor, 'organisation.write');
    return await this.change(actor, async (data) => {
      const all = await data.operators();
      const name = checkedName(input.name, 'name', namesOf(all));
      const id = idFrom(name, idsOf(all));
      await data.addOperator(id, name);
      return {
        answer: one(await data.operators(), id, 'operator'),
        entry: { kind: 'operator.add', subject: { kind: 'operator', id, name }, before: null, after: { name } },
      };
    });
  }

  async renameOperator(
    actor: Actor | null,
    input: { readonly operatorId: string; readonly expectedRevision: number; readonly name: string },
  ): Promise<Operator> {
    authorise(actor, 'organisation.write');
    return await this.change(actor, async (data, expect) => {
      const all = await data.operators();
      const before = one(all, input.operatorId, 'operator', 'input.operatorId');
      const subject: Subject = { kind: 'operator', id: before.id, name: before.name };
      await expect(subject, before.revision, input.expectedRevision);
      const name = checkedName(input.name, 'input.name', namesOf(others(all, before.id)));
      const changed = difference({ name: before.name }, { name });
      if (changed === null) return { answer: before, entry: null };
      await data.renameOperator(before.id, name);
      return {
        answer: one(await data.operators(), before.id, 'operator'),
        entry: { kind: 'operator.rename', subject: { ...subject, name }, ...changed },
      };
    });
  }

  async addBase(actor: Actor | null, input: { readonly name: string; readonly zone: string }): Promise<Base> {
    authorise(actor, 'organisation.write');
    return await this.change(actor, async (data) => {
      const all = await data.bases();
      const name = checkedName(input.name, 'name', namesOf(all));
      const zone = checkedZone(input.zone, 'zone');
      const id = idFrom(name, idsOf(all));
      await data.addBase(id, name, zone);
      return {
        answer: one(await data.bases(), id, 'base'),
        entry: { kind: 'base.add', subject: { kind: 'base', id, name }, before: null, after: { name, zone } },
      };
    });
  }

  /** The list alone: no aircraft record is rewritten, and no verdict changes, because the rules read the record. */
  async amendBase(
    actor: Actor | null,
    input: {
      readonly baseId: string;
      readonly expectedRevision: number;
      readonly name: string;
      readonly zone: string;
    },
  ): Promise<Base> {
    authorise(actor, 'organisation.write');
    return await this.change(actor, async (data, expect) => {
      const all = await data.bases();
      const before = one(all, input.baseId, 'base', 'input.baseId');
      const subject: Subject = { kind: 'base', id: before.id, name: before.name };
      await expect(subject, before.revision, input.expectedRevision);
      const after = {
        name: checkedName(input.name, 'input.name', namesOf(others(all, before.id))),
        zone: checkedZone(input.zone, 'input.zone'),
      };
      const changed = difference({ name: before.name, zone: before.zone }, after);
      if (changed === null) return { answer: before, entry: null };
      await data.amendBase(before.id, after.name, after.zone);
      return {
        answer: one(await data.bases(), before.id, 'base'),
        entry: { kind: 'base.amend', subject: { ...subject, name: after.name }, ...changed },
      };
    });
  }

  async addProfile(actor: Actor | null, input: ProfileInput): Promise<HouseProfile> {
    authorise(actor, 'organisation.write');
    const conditions = checkedConditions(input.conditions, 'input.conditions');
    return await this.change(actor, async (data) => {
      const all = await data.profiles();
      const name = checkedName(input.name, 'input.name', namesOf(all));
      const id = idFrom(name, idsOf(all));
      const sort = Math.max(0, ...all.map((each) => each.sort)) + 1;
      await data.addProfile({ id, name, sort, conditions, wanted: input.wanted });
      return {
        answer: one(await data.profiles(), id, 'flight profile'),
        entry: {
          kind: 'flight-profile.add',
          subject: { kind: 'flight-profile', id, name },
          before: null,
          after: { name, wanted: input.wanted, ...conditions },
        },
      };
    });
  }

  /**
   * Other conditions, or another answer to "wanted", give the set of profiles another stamp: every row judged with the old one
   * is shown as being judged again until the worker has been there.
   */
  async amendProfile(
    actor: Actor | null,
    input: ProfileInput & { readonly profileId: string; readonly expectedRevision: number },
  ): Promise<HouseProfile> {
    authorise(actor, 'organisation.write');
    const conditions = checkedConditions(input.conditions, 'input.conditions');
    return await this.change(actor, async (data, expect) => {
      const all = await data.profiles();
      const before = one(all, input.profileId, 'flight profile', 'input.profileId');
      const subject: Subject = { kind: 'flight-profile', id: before.id, name: before.name };
      await expect(subject, before.revision, input.expectedRevision);
      const name = checkedName(input.name, 'input.name', namesOf(others(all, before.id)));
      const changed = difference(
        { name: before.name, wanted: before.wanted, ...before.conditions },
        { name, wanted: input.wanted, ...conditions },
      );
      if (changed === null) return { answer: before, entry: null };
      await data.amendProfile({ id: before.id, name, wanted: input.wanted, conditions });
      return {
        answer: one(await data.profiles(), before.id, 'flight profile'),
        entry: { kind: 'flight-profile.amend', subject: { ...subject, name }, ...changed },
      };
    });
  }

  /** @throws AppError NOT_FOUND unless the ids are those of all profiles, each once */
  async orderProfiles(actor: Actor | null, ids: readonly string[]): Promise<readonly HouseProfile[]> {
    authorise(actor, 'organisation.write');
    return await this.change(actor, async (data) => {
      const all = await data.profiles();
      const whole = ids.length === all.length && all.every(({ id }) => ids.includes(id));
      if (!whole) throw new AppError({ code: 'NOT_FOUND', what: 'list of flight profiles', field: 'ids' });
      const changed = difference({ order: idsOf(all) }, { order: ids });
      if (changed === null) return { answer: all, entry: null };
      await data.orderProfiles(ids);
      const subject: Subject = { kind: 'organisation', id: actor.organisationId, name: 'Flight profiles' };
      return { answer: await data.profiles(), entry: { kind: 'flight-profile.order', subject, ...changed } };
    });
  }

  private async change<T>(
    actor: Actor,
    work: (
      data: HouseData,
      expect: (subject: Subject, is: number, expected: number) => Promise<void>,
    ) => Promise<Done<T>>,
  ): Promise<T> {
    return await changeHouse(this.database, this.clock, actor, (connection) =>
      work(new HouseData(connection, actor.organisationId), (subject, is, expected) =>
        expectRevision(connection, actor, subject, is, expected),
      ),
    );
  }
}

const namesOf = (list: readonly { readonly name: string }[]): string[] => list.map(({ name }) => name);
const idsOf = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);
const others = <T extends { readonly id: string }>(list: readonly T[], id: string): T[] =>
  list.filter((each) => each.id !== id);

function one<T extends { readonly id: string }>(list: readonly T[], id: string, what: string, field?: string): T {
  const found = list.find((each) => each.id === id);
  if (found === undefined) throw new AppError({ code: 'NOT_FOUND', what, ...(field === undefined ? {} : { field }) });
  return found;
}

function entryNode(row: HouseEntryRow) {
  return {
    id: row.id,
    at: instantOf(row.at),
    by: row.by,
    kind: row.kind,
    subject: { kind: row.subject_kind, id: row.subject_id, name: row.subject_name },
    before: row.before,
    after: row.after,
  };
}
