import type { EquipmentType } from '@tallywing/rules';
import type { Profile } from '../aircraft/stamp.js';
import type { Database } from '../database/database.js';

export interface HouseRecords {
  readonly organisationId: string;
  readonly name: string;
  readonly operators: readonly { readonly id: string; readonly name: string }[];
  readonly bases: readonly { readonly id: string; readonly name: string; readonly zone: string }[];
  readonly profiles: readonly Profile[];
  readonly types: readonly EquipmentType[];
  readonly members: readonly {
    readonly id: string;
    readonly email: string;
    readonly name: string;
    readonly passwordHash: string;
    readonly role: string;
    readonly operatorId: string | null;
    readonly certificate: Readonly<Record<string, string>>;
  }[];
}

/** What is kept with an organisation of the demo: the day it counts from, and whether it was filled to the end. */
export interface DemoMark {
  readonly day: string;
  readonly complete: boolean;
}

export class DemoData {
  constructor(private readonly database: Database) {}

  async organisations(): Promise<string[]> {
    const rows = await this.database.askDoor<{ organisation_id: string }>('door_organisations', []);
    return rows.map((row) => row.organisation_id);
  }

  /** Null: no organisation of the demo. */
  async mark(organisationId: string): Promise<DemoMark | null> {
    return await this.database.withRecords({ organisationId }, async (records) => {
      const found = await records.organisation.findUnique({ where: { organisationId } });
      const policy = found?.policy as { demo?: DemoMark } | null | undefined;
      return policy?.demo ?? null;
    });
  }

  /** Everything but the aircraft, in one transaction: the organisation, its people, lists, profiles and catalogue. */
  async open(house: HouseRecords, day: string): Promise<void> {
    const { organisationId } = house;
    await this.database.withRecords({ organisationId }, async (records) => {
      await records.organisation.create({
        data: { organisationId, name: house.name, policy: { demo: { day, complete: false } } },
      });
      const own = <T extends object>(rows: readonly T[]) => rows.map((row) => ({ organisationId, ...row }));
      await records.operator.createMany({ data: own(house.operators) });
      await records.base.createMany({ data: own(house.bases) });
      await records.member.createMany({ data: own(house.members) });
      await records.flightProfile.createMany({
        data: house.profiles.map(({ id, name, conditions }, sort) => ({
          organisationId,
          id,
          name,
          sort,
          conditions: { ...conditions, airspace: [...conditions.airspace], approaches: [...conditions.approaches] },
        })),
      });
      await records.equipmentType.createMany({
        data: house.types.map((type) => ({
          organisationId,
          id: type.id,
          family: type.family,
          body: JSON.parse(JSON.stringify(type)) as object,
        })),
      });
    });
  }

  async close(organisationId: string, day: string): Promise<void> {
    await this.database.withRecords({ organisationId }, (records) =>
      records.organisation.update({
        where: { organisationId },
        data: { policy: { demo: { day, complete: true } } },
      }),
    );
  }
}
