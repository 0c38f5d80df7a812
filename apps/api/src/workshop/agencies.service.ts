import { randomUUID } from 'node:crypto';
import type { Clock } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { checkedText } from '../house/checks.js';
import { changeHouse, difference, expectRevision } from '../house/house-entry.data.js';
import type { Subject } from '../house/house-entry.data.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { checkedCertificate } from '../people/certificate.js';
import { people } from '../people/people.data.js';
import { agencies, insertAgency, updateAgency } from './agencies.data.js';
import type { Agency, AgencyFacts } from './agencies.data.js';
import { TestSetsData } from './test-sets.data.js';

type Given = Pick<AgencyFacts, 'kind' | 'name'> & Partial<AgencyFacts>;

/** Whoever outside the house signs work, and what an entry may name. */
export class AgenciesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor | null): Promise<Agency[]> {
    authorise(actor, 'workshop.read');
    return await this.database.withOrganisation(actor, (connection) => agencies(connection, actor.organisationId));
  }

  /**
   * A set that a check put out of use is not offered; one whose calibration has run out is, with its last day, and the rules say
   * what an entry made with it is worth.
   */
  async choices(actor: Actor | null) {
    authorise(actor, 'workshop.read');
    const today = this.clock.now().toISOString().slice(0, 10);
    return await this.database.withOrganisation(actor, async (connection) => {
      const sets = await new TestSetsData(connection, actor.organisationId).all();
      const outside = await agencies(connection, actor.organisationId);
      const members = await people(connection, actor.organisationId);
      return {
        testSets: sets.filter(({ inUse, calibratedUntil }) => inUse && calibratedUntil !== null),
        agencies: [
          ...outside.filter(
            ({ inUse, heldFrom, heldUntil }) =>
              inUse && (heldFrom === null || heldFrom <= today) && (heldUntil === null || heldUntil >= today),
          ),
          ...members.flatMap(({ active, name, certificate }) =>
            active && certificate !== null
              ? [{ kind: certificate.kind, name, certificate: certificate.number, ratings: certificate.ratings }]
              : [],
          ),
        ],
      };
    });
  }

  async add(actor: Actor | null, input: Given): Promise<Agency> {
    authorise(actor, 'workshop.write');
    const facts = checkedFacts(input);
    const id = randomUUID();
    return await changeHouse(this.database, this.clock, actor, async (connection) => {
      await insertAgency(connection, actor.organisationId, id, facts);
      return {
        answer: await one(connection, actor, id),
        entry: { kind: 'agency.add', subject: subjectOf({ id, ...facts }), before: null, after: { ...facts } },
      };
    });
  }

  async amend(
    actor: Actor | null,
    input: Given & { readonly agencyId: string; readonly expectedRevision: number },
  ): Promise<Agency> {
    authorise(actor, 'workshop.write');
    const facts = checkedFacts(input);
    return await changeHouse(this.database, this.clock, actor, async (connection) => {
      const before = await one(connection, actor, input.agencyId);
      await expectRevision(connection, actor, subjectOf(before), before.revision, input.expectedRevision);
      const changed = difference(before, { ...facts });
      if (changed === null) return { answer: before, entry: null };
      await updateAgency(connection, actor.organisationId, before.id, facts);
      return {
        answer: await one(connection, actor, before.id),
        entry: { kind: 'agency.amend', subject: subjectOf({ ...before, name: facts.name }), ...changed },
      };
    });
  }
}

function checkedFacts(given: Given): AgencyFacts {
  const { heldFrom = null, heldUntil = null } = given;
  if (heldFrom !== null && heldUntil !== null && heldUntil < heldFrom)
    throw badInput('input.heldUntil', 'The last day is before the first.', 'Compare both with the certificate.');
  const held = checkedCertificate(
    { kind: given.kind, number: given.certificate ?? null, ratings: given.ratings ?? null },
    'input',
  );
  return {
    kind: given.kind,
    name: checkedText(given.name, 'input.name', 'the name that stands in the record'),
    certificate: held?.number ?? null,
    ratings: held?.ratings ?? null,
    heldFrom,
    heldUntil,
    inUse: given.inUse ?? true,
  };
}

async function one(connection: Connection, actor: Actor, id: string): Promise<Agency> {
  const found = (await agencies(connection, actor.organisationId)).find((each) => each.id === id);
  if (found === undefined) throw new AppError({ code: 'NOT_FOUND', what: 'agency', field: 'input.agencyId' });
  return found;
}

function subjectOf({ id, name }: Pick<Agency, 'id' | 'name'>): Subject {
  return { kind: 'agency', id, name };
}
