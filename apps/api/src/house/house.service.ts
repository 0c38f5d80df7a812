import { randomUUID } from 'node:crypto';
import { AppError, badInput } from '../common/errors.js';
import { authorise, roles } from '../identity/access.js';
import type { Actor, Role } from '../identity/access.js';
import type { IdentityData } from '../identity/identity.data.js';
import { hashPassword, SHORTEST_PASSWORD } from '../identity/passwords.js';
import type { House, HouseData } from './house.data.js';

export interface NewPerson {
  readonly id?: string;
  readonly email: string;
  readonly name: string;
  readonly password: string;
  readonly role: Role;
  readonly operatorId?: string | null;
  readonly certificate?: Readonly<Record<string, string>>;
}

/** The organisation itself: its people, operators, bases and flight profiles. */
export class HouseService {
  constructor(
    private readonly data: HouseData,
    private readonly identity: IdentityData,
  ) {}

  organisations(): Promise<readonly string[]> {
    return this.data.organisations();
  }

  /**
   * Founds an organisation with its first manager. Only for start-up and set-up on the machine itself: no route leads here.
   * @returns the manager, on whose behalf everything else is set up
   */
  async found(organisation: { readonly id: string; readonly name: string }, manager: NewPerson): Promise<Actor> {
    await this.data.create(organisation.id, organisation.name);
    const actor: Actor = {
      organisationId: organisation.id,
      memberId: manager.id ?? randomUUID(),
      name: manager.name,
      role: 'manager',
    };
    await this.addPerson(actor, { ...manager, id: actor.memberId, role: 'manager' });
    return actor;
  }

  /** @throws AppError BAD_INPUT naming the field */
  async addPerson(actor: Actor | null, person: NewPerson): Promise<string> {
    authorise(actor, 'people.write');
    const email = person.email.trim().toLowerCase();
    if (!/^[^\s@]+@[^\s@]+$/.test(email) || email.length > 254)
      throw badInput('email', 'This is not an e-mail address.', 'Write it like name@example.com.');
    if (person.name.trim() === '')
      throw badInput('name', 'The name is empty.', 'Write the name that stands in the record.');
    if (!roles.includes(person.role))
      throw badInput('role', 'There is no such role.', `Use one of ${roles.join(', ')}.`);
    if (person.password.length < SHORTEST_PASSWORD) {
      throw badInput(
        'password',
        `The password has fewer than ${SHORTEST_PASSWORD} characters.`,
        'Choose a longer one.',
      );
    }
    const id = person.id ?? randomUUID();
    const added = await this.identity.addMember(actor.organisationId, {
      id,
      email,
      name: person.name.trim(),
      passwordHash: await hashPassword(person.password),
      role: person.role,
      operatorId: person.operatorId ?? null,
      certificate: person.certificate ?? {},
    });
    if (!added) throw badInput('email', 'Somebody with this address is already a member.', 'Use another address.');
    return id;
  }

  async setUp(actor: Actor | null, house: House): Promise<void> {
    authorise(actor, 'organisation.write');
    await this.data.save(actor.organisationId, house);
  }

  /** The actor behind an address, for commands run on the machine itself. @throws AppError NOT_FOUND */
  async actorByEmail(email: string): Promise<Actor> {
    const [found] = await this.identity.candidates(email.trim().toLowerCase());
    const person =
      found === undefined
        ? undefined
        : (await this.identity.members(found.organisation_id)).find((each) => each.id === found.member_id);
    const role = roles.find((each) => each === person?.role);
    if (found === undefined || person === undefined || role === undefined)
      throw new AppError({ code: 'NOT_FOUND', what: 'member with that address' });
    return {
      organisationId: found.organisation_id,
      memberId: person.id,
      name: person.name,
      role,
      ...(person.operatorId === null ? {} : { operatorId: person.operatorId }),
    };
  }
}
