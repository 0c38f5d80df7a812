import { randomUUID } from 'node:crypto';
import type { Clock } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import type { Actor } from '../identity/access.js';
import { IdentityData } from '../identity/identity.data.js';
import { people } from '../people/people.data.js';
import { checkedPerson, PeopleService } from '../people/people.service.js';
import type { NewPerson } from '../people/people.service.js';
import { checkedText, checkedZone } from './checks.js';
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
   * Founds an organisation with its lists and its first manager. Everything is looked at before anything is written, and an
   * organisation without people is not there yet: whatever went wrong, the same can be founded again.
   * @returns the manager, on whose behalf everything else is set up
   * @throws AppError BAD_INPUT naming the field
   */
  async found(
    organisation: { readonly id: string; readonly name: string },
    house: House,
    manager: Omit<NewPerson, 'role'>,
    others: readonly NewPerson[],
  ): Promise<Actor> {
    checkOrganisation(organisation, house);
    const first: NewPerson = { ...manager, role: 'manager' };
    for (const person of [first, ...others]) checkPerson(person, house);
    if (await this.isFounded(organisation.id))
      throw badInput(
        'organisation.id',
        `There is an organisation ${organisation.id} already.`,
        'Choose another id, or sign in as its manager.',
      );
    await createOrganisation(this.database, organisation.id, organisation.name);
    const actor: Actor = {
      organisationId: organisation.id,
      memberId: manager.id ?? randomUUID(),
      name: manager.name,
      role: 'manager',
    };
    await this.setUp(actor, house);
    for (const person of [{ ...first, id: actor.memberId }, ...others]) await this.people.add(actor, person);
    return actor;
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

  private async isFounded(organisationId: string): Promise<boolean> {
    return (await this.organisations()).includes(organisationId) && (await this.membersOf(organisationId)).length > 0;
  }

  private async setUp(actor: Actor, house: House): Promise<void> {
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

  private membersOf(organisationId: string) {
    return this.database.withOrganisation({ organisationId }, (connection) => people(connection, organisationId));
  }
}

function checkOrganisation({ id, name }: { readonly id: string; readonly name: string }, house: House): void {
  if (!/^[a-z0-9][a-z0-9-]{0,63}$/.test(id))
    throw badInput('organisation.id', `${id} cannot be the id.`, 'Use small letters, digits and hyphens: our-shop.');
  checkedText(name, 'organisation.name', 'the name that people know');
  for (const base of house.bases ?? []) checkedZone(base.zone, 'bases.zone');
  for (const list of [house.operators, house.bases, house.profiles])
    for (const each of list ?? [])
      if (list?.some((other) => other !== each && other.id === each.id))
        throw badInput(
          'id',
          `The id ${each.id} is there twice.`,
          'Give each operator, base and profile an id of its own.',
        );
}

function checkPerson(person: NewPerson, house: House): void {
  checkedPerson(person);
  const operatorId = person.operatorId ?? null;
  if (operatorId !== null && !house.operators?.some(({ id }) => id === operatorId))
    throw badInput('operatorId', `There is no operator ${operatorId}.`, 'Name one of the operators in the same file.');
}
