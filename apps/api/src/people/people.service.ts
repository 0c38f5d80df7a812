import { randomUUID } from 'node:crypto';
import type { Clock } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { changeHouse, difference, expectRevision } from '../house/house-entry.data.js';
import type { Done, Subject } from '../house/house-entry.data.js';
import { authorise, roles } from '../identity/access.js';
import type { Actor, Role } from '../identity/access.js';
import { checkPassword, hashPassword } from '../identity/passwords.js';
import { checkedCertificate } from './certificate.js';
import type { Certificate } from './certificate.js';
import {
  insertPerson,
  operatorKnown,
  otherActiveManagers,
  people,
  personById,
  updatePassword,
  updatePerson,
} from './people.data.js';
import type { Person, PersonFacts } from './people.data.js';
import { endSessionsOf } from './sessions.data.js';

export interface NewPerson {
  readonly id?: string;
  readonly email: string;
  readonly name: string;
  readonly password: string;
  readonly role: Role;
  readonly operatorId?: string | null;
  readonly certificate?: Certificate | null;
}

/** One person as a manager saw it. */
export interface Seen {
  readonly personId: string;
  readonly expectedRevision: number;
}

/** Who belongs to the organisation, what they may do and what they may sign. */
export class PeopleService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor | null): Promise<Person[]> {
    authorise(actor, 'people.read');
    return await this.database.withOrganisation(actor, (connection) => people(connection, actor.organisationId));
  }

  /** @throws AppError BAD_INPUT naming the field */
  async add(actor: Actor | null, person: NewPerson): Promise<Person> {
    authorise(actor, 'people.write');
    const { email, facts } = checkedPerson(person);
    const passwordHash = await hashPassword(person.password);
    const id = person.id ?? randomUUID();
    return await changeHouse(this.database, this.clock, actor, async (connection) => {
      await checkOperator(connection, actor, facts.operatorId);
      const added = await insertPerson(connection, actor.organisationId, { id, email, passwordHash, ...facts });
      if (!added)
        throw badInput('input.email', 'Somebody with this address is already a member.', 'Use another address.');
      const subject: Subject = { kind: 'person', id, name: facts.name };
      return {
        answer: await reread(connection, actor, id),
        entry: { kind: 'person.add', subject, before: null, after: { email, ...facts } },
      };
    });
  }

  /** @throws AppError BAD_INPUT naming the field, or for the last manager; STALE_REVISION */
  async amend(actor: Actor | null, input: Seen & Omit<NewPerson, 'id' | 'email' | 'password'>): Promise<Person> {
    authorise(actor, 'people.write');
    const facts = checkedFacts(input);
    return await this.change(actor, input, 'person.amend', async (connection, before) => {
      await checkOperator(connection, actor, facts.operatorId);
      return { ...facts, active: before.active };
    });
  }

  /** Ends every session of a person who is deactivated in the same transaction. */
  async setActive(actor: Actor | null, input: Seen, active: boolean): Promise<Person> {
    authorise(actor, 'people.write');
    return await this.change(
      actor,
      input,
      active ? 'person.reactivate' : 'person.deactivate',
      async (connection, before, now) => {
        if (!active) await endSessionsOf(connection, actor.organisationId, input.personId, now);
        return { ...factsOf(before), active };
      },
    );
  }

  /** Ends every session of that person: whoever knew the old password is out. */
  async setPassword(actor: Actor | null, input: Seen & { readonly password: string }): Promise<Person> {
    authorise(actor, 'people.write');
    checkPassword(input.password, 'input.password');
    const passwordHash = await hashPassword(input.password);
    return await changeHouse(this.database, this.clock, actor, async (connection, now) => {
      const before = await seen(connection, actor, input);
      await updatePassword(connection, actor.organisationId, before.id, passwordHash);
      const ended = await endSessionsOf(connection, actor.organisationId, before.id, now);
      return {
        answer: await reread(connection, actor, before.id),
        entry: { kind: 'person.password', subject: subjectOf(before), before: null, after: { sessionsEnded: ended } },
      };
    });
  }

  private async change(
    actor: Actor,
    input: Seen,
    kind: string,
    work: (connection: Connection, before: Person, now: Date) => Promise<PersonFacts>,
  ): Promise<Person> {
    return await changeHouse(this.database, this.clock, actor, async (connection, now): Promise<Done<Person>> => {
      const before = await seen(connection, actor, input);
      const facts = await work(connection, before, now);
      const changed = difference({ ...factsOf(before) }, { ...facts });
      if (changed === null) return { answer: before, entry: null };
      await keepOneManager(connection, actor, before, facts);
      await updatePerson(connection, actor.organisationId, before.id, facts);
      return {
        answer: await reread(connection, actor, before.id),
        entry: { kind, subject: { ...subjectOf(before), name: facts.name }, ...changed },
      };
    });
  }
}

/** @throws AppError BAD_INPUT naming the field */
export function checkedPerson(given: NewPerson): { readonly email: string; readonly facts: PersonFacts } {
  const email = given.email.trim().toLowerCase();
  if (!/^[^\s@]+@[^\s@]+$/.test(email) || email.length > 254)
    throw badInput('input.email', 'This is not an e-mail address.', 'Write it like name@example.com.');
  const facts = checkedFacts(given);
  checkPassword(given.password, 'input.password');
  return { email, facts };
}

function checkedFacts(given: Omit<NewPerson, 'id' | 'email' | 'password'>): PersonFacts {
  const name = given.name.trim();
  if (name === '' || name.length > 200)
    throw badInput('input.name', 'The name has 1 to 200 characters.', 'Write the name that stands in the record.');
  if (!roles.includes(given.role))
    throw badInput('input.role', 'There is no such role.', `Use one of ${roles.join(', ')}.`);
  const operatorId = given.operatorId ?? null;
  if (operatorId !== null && given.role !== 'dispatcher')
    throw badInput(
      'input.operatorId',
      'Only a dispatcher works for one operator alone.',
      'Leave the operator out, or make the person a dispatcher.',
    );
  const certificate = checkedCertificate(given.certificate, 'input.certificate');
  return { name, role: given.role, operatorId, certificate, active: true };
}

async function checkOperator(connection: Connection, actor: Actor, id: string | null): Promise<void> {
  if (id !== null && !(await operatorKnown(connection, actor.organisationId, id)))
    throw new AppError({ code: 'NOT_FOUND', what: 'operator', field: 'input.operatorId' });
}

/** Nobody could let anybody in any more without one. The house is locked, so nobody else demotes the other meanwhile. */
async function keepOneManager(connection: Connection, actor: Actor, before: Person, after: PersonFacts): Promise<void> {
  const wasOne = before.role === 'manager' && before.active;
  const isOne = after.role === 'manager' && after.active;
  if (!wasOne || isOne || (await otherActiveManagers(connection, actor.organisationId, before.id)) > 0) return;
  throw badInput(
    before.role === after.role ? 'input.personId' : 'input.role',
    `${before.name} is the last active manager.`,
    'Make somebody else a manager first.',
  );
}

async function seen(connection: Connection, actor: Actor, input: Seen): Promise<Person> {
  const before = await personById(connection, actor.organisationId, input.personId);
  if (before === null) throw new AppError({ code: 'NOT_FOUND', what: 'person', field: 'input.personId' });
  await expectRevision(connection, actor, subjectOf(before), before.revision, input.expectedRevision);
  return before;
}

async function reread(connection: Connection, actor: Actor, id: string): Promise<Person> {
  const person = await personById(connection, actor.organisationId, id);
  if (person === null) throw new AppError({ code: 'NOT_FOUND', what: 'person' });
  return person;
}

function factsOf({ name, role, operator, certificate, active }: Person): PersonFacts {
  return { name, role, operatorId: operator?.id ?? null, certificate, active };
}

function subjectOf({ id, name }: Person): Subject {
  return { kind: 'person', id, name };
}
