import type { FlightConditions } from '@tallywing/rules';
import type { Connection } from '../database/database.js';

export interface Operator {
  readonly id: string;
  readonly name: string;
  readonly revision: number;
  readonly aircraft: number;
  readonly [column: string]: unknown;
}

export interface Base {
  readonly id: string;
  readonly name: string;
  readonly zone: string;
  readonly revision: number;
  readonly aircraft: number;
  readonly otherZone: number;
  readonly [column: string]: unknown;
}

export interface HouseProfile {
  readonly id: string;
  readonly name: string;
  readonly wanted: boolean;
  readonly conditions: FlightConditions;
  readonly sort: number;
  readonly revision: number;
  readonly [column: string]: unknown;
}

/** Operators, bases and flight profiles over one open connection. Whoever has it has been authorised already. */
export class HouseData {
  constructor(
    private readonly connection: Connection,
    private readonly organisationId: string,
  ) {}

  async operators(): Promise<Operator[]> {
    return await this.connection.query<Operator>(
      `select o.id, o.name, o.revision, count(a.id)::int as aircraft
       from operators o left join aircraft a on a.organisation_id = o.organisation_id and a.operator_id = o.id
       where o.organisation_id = $1 group by o.organisation_id, o.id order by o.name, o.id`,
      [this.organisationId],
    );
  }

  async bases(): Promise<Base[]> {
    return await this.connection.query<Base>(
      `select b.id, b.name, b.zone, b.revision, count(a.id)::int as aircraft,
         count(a.id) filter (where a.configuration #>> '{aircraft,base,zone}' <> b.zone)::int as "otherZone"
       from bases b left join aircraft a on a.organisation_id = b.organisation_id and a.base_id = b.id
       where b.organisation_id = $1 group by b.organisation_id, b.id order by b.name, b.id`,
      [this.organisationId],
    );
  }

  async profiles(): Promise<HouseProfile[]> {
    return await this.connection.query<HouseProfile>(
      'select id, name, wanted, conditions, sort, revision from flight_profiles where organisation_id = $1 order by sort, id',
      [this.organisationId],
    );
  }

  async addOperator(id: string, name: string): Promise<void> {
    await this.connection.query('insert into operators (organisation_id, id, name) values ($1, $2, $3)', [
      this.organisationId,
      id,
      name,
    ]);
  }

  async renameOperator(id: string, name: string): Promise<void> {
    await this.connection.query(
      'update operators set name = $3, revision = revision + 1 where organisation_id = $1 and id = $2',
      [this.organisationId, id, name],
    );
  }

  async addBase(id: string, name: string, zone: string): Promise<void> {
    await this.connection.query('insert into bases (organisation_id, id, name, zone) values ($1, $2, $3, $4)', [
      this.organisationId,
      id,
      name,
      zone,
    ]);
  }

  async amendBase(id: string, name: string, zone: string): Promise<void> {
    await this.connection.query(
      'update bases set name = $3, zone = $4, revision = revision + 1 where organisation_id = $1 and id = $2',
      [this.organisationId, id, name, zone],
    );
  }

  async addProfile(profile: Omit<HouseProfile, 'revision'>): Promise<void> {
    this.connection.judgeAgain();
    await this.connection.query(
      'insert into flight_profiles (organisation_id, id, name, sort, conditions, wanted) values ($1, $2, $3, $4, $5, $6)',
      [this.organisationId, profile.id, profile.name, profile.sort, JSON.stringify(profile.conditions), profile.wanted],
    );
  }

  async amendProfile(profile: Pick<HouseProfile, 'id' | 'name' | 'wanted' | 'conditions'>): Promise<void> {
    this.connection.judgeAgain();
    await this.connection.query(
      `update flight_profiles set name = $3, conditions = $4, wanted = $5, revision = revision + 1
       where organisation_id = $1 and id = $2`,
      [this.organisationId, profile.id, profile.name, JSON.stringify(profile.conditions), profile.wanted],
    );
  }

  async orderProfiles(ids: readonly string[]): Promise<void> {
    await this.connection.query(
      `update flight_profiles p set sort = o.place from unnest($2::text[]) with ordinality o(id, place)
       where p.organisation_id = $1 and p.id = o.id`,
      [this.organisationId, ids],
    );
  }
}
