import type { Connection } from '../database/database.js';

export interface Calibration {
  readonly id: string;
  readonly checkedOn: string;
  readonly asFound: 'in-tolerance' | 'out-of-tolerance' | null;
  readonly goodUntil: string | null;
  readonly certificate: string | null;
  readonly struck: string | null;
}

export interface TestSet {
  readonly id: string;
  readonly serial: string;
  readonly name: string;
  readonly inUse: boolean;
  readonly revision: number;
  readonly calibratedUntil: string | null;
  /** Newest first. */
  readonly calibrations: readonly Calibration[];
}

type SetRow = Omit<TestSet, 'calibrations' | 'calibratedUntil'> & { readonly [column: string]: unknown };
type CheckRow = Calibration & { readonly testSetId: string; readonly [column: string]: unknown };

/** The house's test sets over one open connection. Whoever has it has been authorised already. */
export class TestSetsData {
  constructor(
    private readonly connection: Connection,
    private readonly organisationId: string,
  ) {}

  async all(): Promise<TestSet[]> {
    const sets = await this.connection.query<SetRow>(
      `select id, serial, name, in_use as "inUse", revision from test_sets where organisation_id = $1
       order by in_use desc, name, serial`,
      [this.organisationId],
    );
    const checks = await this.connection.query<CheckRow>(
      `select id, test_set_id as "testSetId", checked_on as "checkedOn", as_found as "asFound", good_until as "goodUntil",
         certificate, struck
       from calibrations where organisation_id = $1 order by checked_on desc, id desc`,
      [this.organisationId],
    );
    return sets.map((set) => {
      const calibrations = checks.filter(({ testSetId }) => testSetId === set.id);
      return { ...set, calibrations, calibratedUntil: standing(calibrations)[0]?.goodUntil ?? null };
    });
  }

  async add(set: { readonly id: string; readonly serial: string; readonly name: string }): Promise<void> {
    await this.connection.query('insert into test_sets (organisation_id, id, serial, name) values ($1, $2, $3, $4)', [
      this.organisationId,
      set.id,
      set.serial,
      set.name,
    ]);
  }

  async amend(set: Pick<TestSet, 'id' | 'serial' | 'name' | 'inUse'>): Promise<void> {
    await this.connection.query(
      `update test_sets set serial = $3, name = $4, in_use = $5, revision = revision + 1
       where organisation_id = $1 and id = $2`,
      [this.organisationId, set.id, set.serial, set.name, set.inUse],
    );
  }

  async addCalibration(testSetId: string, check: Omit<Calibration, 'struck'>): Promise<void> {
    await this.connection.query(
      `insert into calibrations (organisation_id, id, test_set_id, checked_on, as_found, good_until, certificate)
       values ($1, $2, $3, $4, $5, $6, $7)`,
      [this.organisationId, check.id, testSetId, check.checkedOn, check.asFound, check.goodUntil, check.certificate],
    );
    await this.count(testSetId);
  }

  async strikeCalibration(testSetId: string, id: string, reason: string): Promise<void> {
    await this.connection.query('update calibrations set struck = $3 where organisation_id = $1 and id = $2', [
      this.organisationId,
      id,
      reason,
    ]);
    await this.count(testSetId);
  }

  private async count(testSetId: string): Promise<void> {
    await this.connection.query('update test_sets set revision = revision + 1 where organisation_id = $1 and id = $2', [
      this.organisationId,
      testSetId,
    ]);
  }
}

/** The checks that were not struck out. */
export function standing(calibrations: readonly Calibration[]): readonly Calibration[] {
  return calibrations.filter(({ struck }) => struck === null);
}
