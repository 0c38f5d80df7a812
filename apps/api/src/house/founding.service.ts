import { randomUUID } from 'node:crypto';
import type { Clock } from '../common/clock.js';
import { AppError } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { IdentityData } from '../identity/identity.data.js';
import { people } from '../people/people.data.js';
import { PeopleService } from '../people/people.service.js';
import type { NewPerson } from '../people/people.service.js';
import { createOrganisation, organisations, saveLists } from './founding.data.js';
import type { House } from './founding.data.js';
import { changeHouse } from './house-entry.data.js';

/** For commands on the machine itself, before anybody can sign in: no route leads here. */
export class FoundingService {
  private readonly people: PeopleService;
  private readonly identity: IdentityData;

  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {
    this.people = new PeopleService(database, clock);
    this.identity = new IdentityData(database);
  }

  organisations(): Promise<readonly string[]> {
    return organisations(this.database);
  }

  /**
   * Founds an organisation with its first manager.
   * @returns the manager, on whose behalf everything else is set up
   */
  async found(organisation: { readonly id: string; readonly name: string }, manager: NewPerson): Promise<Actor> {
    await createOrganisation(this.database, organisation.id, organisation.name);
    const actor: Actor = {
      organisationId: organisation.id,
      memberId: manager.id ?? randomUUID(),
      name: manager.name,
      role: 'manager',
    };
    await this.people.add(actor, { ...manager, id: actor.memberId, role: 'manager' });
    return actor;
  }

  async addPerson(actor: Actor, person: NewPerson): Promise<void> {
    await this.people.add(actor, person);
  }

  async setUp(actor: Actor | null, house: House): Promise<void> {
    authorise(actor, 'organisation.write');
    await changeHouse(this.database, this.clock, actor, async (connection) => {
      await saveLists(connection, actor.organisationId, house);
      const names = (list: readonly { readonly name: string }[] = []) => list.map(({ name }) => name);
      return {
        answer: undefined,
        entry: {
          kind: 'organisation.found',
          subject: { kind: 'organisation', id: actor.organisationId, name: actor.organisationId },
          before: null,
          after: { operators: names(house.operators), bases: names(house.bases), profiles: names(house.profiles) },
        },
      };
    });
  }

  /** Addresses of the active managers of every organisation here. */
  async managers(): Promise<readonly string[]> {
    const found: string[] = [];
    for (const organisationId of await this.organisations()) {
      const members = await this.membersOf(organisationId);
      found.push(...members.filter(({ role, active }) => role === 'manager' && active).map(({ email }) => email));
    }
    return found;
  }

  /** The actor behind an address. @throws AppError NOT_FOUND */
  async actorByEmail(email: string): Promise<Actor> {
    const [found] = await this.identity.candidates(email.trim().toLowerCase());
    const members = found === undefined ? [] : await this.membersOf(found.organisation_id);
    const person = members.find((each) => each.id === found?.member_id);
    if (found === undefined || person === undefined)
      throw new AppError({ code: 'NOT_FOUND', what: 'member with that address' });
    return {
      organisationId: found.organisation_id,
      memberId: person.id,
      name: person.name,
      role: person.role,
      ...(person.operator === null ? {} : { operatorId: person.operator.id }),
    };
  }

  private membersOf(organisationId: string) {
    return this.database.withOrganisation({ organisationId }, (connection) => people(connection, organisationId));
  }
}
