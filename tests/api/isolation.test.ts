import {
  getNamedType,
  isEnumType,
  isInputObjectType,
  isListType,
  isNonNullType,
  isObjectType,
  isScalarType,
} from 'graphql';
import type { GraphQLField, GraphQLInputType, GraphQLObjectType } from 'graphql';
import { beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, hold, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { schema } from './inputs.js';
import { as } from './people.js';

/** Marks that can only come from the first organisation's rows. */
const marks = [
  'TW-ISO',
  'iso-plane',
  'Shop One',
  'Technician One',
  'North Flyers',
  'one.example',
  'A secret of shop one',
];

const leaked = (answer: unknown): string[] => marks.filter((mark) => JSON.stringify(answer).includes(mark));

let owner: Client;
let keeper: Client;
let stranger: Client;
let jobId = '';

beforeAll(async () => {
  owner = await as('technician@one.example');
  keeper = await as('manager@one.example');
  stranger = await as('manager@two.example');
  const answer = await owner.record('iso-plane', 0, [
    add('TW-ISO', { operatorId: 'north' }),
    defineMeter(),
    readMeter(100_000, `${daysAgo(2)}T12:00Z`),
    hold('iso', `${daysAgo(1)}T00:00Z`, null),
  ]);
  expect(answer.errors).toBeUndefined();
  const { createJob } = await owner.data(
    'mutation { createJob(input: { aircraftId: "iso-plane", title: "A secret of shop one" }) { id } }',
  );
  jobId = createJob.id;
});

/** Every field of a type that needs no argument, three levels deep, so that whatever can leak is asked for. */
function everything(type: GraphQLObjectType, depth: number): string {
  return Object.values(type.getFields())
    .filter((field) => field.args.every((argument) => !isNonNullType(argument.type)))
    .map((field) => {
      const inner = getNamedType(field.type);
      if (!isObjectType(inner)) return field.name;
      return depth === 0 ? '' : `${field.name} { ${everything(inner, depth - 1)} __typename }`;
    })
    .join(' ');
}

/** Where the first value that comes to mind would be refused before anybody looks for the row. */
const sensible: Readonly<Record<string, unknown>> = {
  // Somebody whom only the first organisation has: some ids of the cast are in both.
  personId: 'dispatcher',
  role: 'DISPATCHER',
  email: 'guess@two.example',
  password: 'a-guess-of-enough-letters',
  zone: 'UTC',
  rules: 'IFR',
  checkedOn: '2026-01-01',
  goodUntil: '2027-01-01',
  until: `${daysAgo(-5)}T12:00Z`,
};

/** Arguments of a field as somebody would fill them in who knows the first organisation's ids. */
function guess(type: GraphQLInputType, name: string): unknown {
  if (isNonNullType(type)) return guess(type.ofType, name);
  if (name in sensible) return sensible[name];
  if (isListType(type))
    return name === 'changes'
      ? [{ holdLift: { holdId: 'iso', at: '2026-01-01T00:00Z', reason: 'taken over' } }]
      : [guess(type.ofType, name)];
  if (isEnumType(type)) return type.getValues()[0]?.name;
  if (isInputObjectType(type)) {
    return Object.fromEntries(
      Object.values(type.getFields())
        .filter((field) => isNonNullType(field.type) || /Id$/.test(field.name) || field.name in sensible)
        .map((field) => [field.name, guess(field.type, field.name)]),
    );
  }
  if (!isScalarType(type)) return null;
  if (name === 'job') return 'vor-check';
  if (type.name === 'Boolean') return true;
  if (/job/i.test(name)) return jobId;
  if (name === 'operatorId') return 'north';
  if (/^(id|aircraftId)$/.test(name)) return 'iso-plane';
  if (type.name === 'Int' || type.name === 'Float') return name === 'expectedRevision' ? 4 : 1;
  if (name === 'key') return `guess-${Math.random().toString(36).slice(2)}`;
  if (name === 'draft') return '{}';
  return name;
}

function operation(
  kind: 'query' | 'mutation',
  field: GraphQLField<unknown, unknown>,
): { query: string; variables: Record<string, unknown> } {
  const named = field.args.filter((argument) => isNonNullType(argument.type));
  const inner = getNamedType(field.type);
  const declared = named.map((argument) => `$${argument.name}: ${String(argument.type)}`).join(', ');
  const passed = named.map((argument) => `${argument.name}: $${argument.name}`).join(', ');
  return {
    query: `${kind} ${declared === '' ? '' : `(${declared})`} { ${field.name}${passed === '' ? '' : `(${passed})`} ${isObjectType(inner) ? `{ ${everything(inner, 3)} __typename }` : ''} }`,
    variables: Object.fromEntries(named.map((argument) => [argument.name, guess(argument.type, argument.name)])),
  };
}

const queries = Object.values(schema.getQueryType()?.getFields() ?? {});
/** These name nothing of the first organisation: whoever calls them can only add to, or end, their own. */
const ownOnly = new Set([
  'addPerson',
  'addOperator',
  'addBase',
  'addFlightProfile',
  'addTestSet',
  'addAgency',
  'setHousePolicy',
  'endOtherSessions',
]);
const mutations = Object.values(schema.getMutationType()?.getFields() ?? {}).filter(
  (field) => !/^sign/.test(field.name),
);

describe('another organisation', () => {
  it('is really there: its own people see these rows', async () => {
    const seen = JSON.stringify(
      await Promise.all(
        queries.map((field) => operation('query', field)).map(({ query, variables }) => owner.ask(query, variables)),
      ),
    );
    for (const mark of ['TW-ISO', 'iso-plane', 'North Flyers', 'A secret of shop one']) expect(seen).toContain(mark);
  });

  it.each(queries.map((field) => [field.name, field] as const))('sees nothing by %s', async (_, field) => {
    const { query, variables } = operation('query', field);
    const answer = await stranger.ask(query, variables);
    // An answer that never ran would prove nothing.
    expect((answer.errors ?? []).filter((problem) => problem.extensions.code === 'BAD_INPUT')).toEqual([]);
    expect(leaked(answer)).toEqual([]);
  });

  it.each(mutations.map((field) => [field.name, field] as const))('changes nothing by %s', async (_, field) => {
    const look = async (): Promise<Data> =>
      await owner.data(
        `{ aircraft(id: "iso-plane") { revision findings { key } } jobs(aircraftId: "iso-plane") { id title state draft }
          labour { version } }`,
      );
    const lookAtHouse = async (): Promise<Data> =>
      await keeper.data(
        `{ people { id name role active revision } sessions { id } testSets { id serial revision } agencies { id name } house { operators { id name } bases { id name zone } profiles { id name } }
           houseEntries { totalCount } }`,
      );
    const before = [await look(), await lookAtHouse()];
    const { query, variables } = operation('mutation', field);
    const answer = await stranger.ask(query, variables);
    if (!ownOnly.has(field.name))
      expect(answer.errors?.[0]?.extensions.code).toMatch(/^(NOT_FOUND|REFUSED|STALE_REVISION)$/);
    expect(leaked(answer)).toEqual([]);
    expect([await look(), await lookAtHouse()]).toEqual(before);
  });

  it('may use the same registration and id for an aircraft of its own', async () => {
    const answer = await stranger.record('iso-plane', 0, [add('TW-ISO')]);
    expect(answer.errors).toBeUndefined();
    expect((await stranger.data('{ aircraft(id: "iso-plane") { revision operator { id } } }')).aircraft).toEqual({
      revision: 1,
      operator: null,
    });
    expect((await owner.data('{ aircraft(id: "iso-plane") { revision operator { id } } }')).aircraft).toEqual({
      revision: 4,
      operator: { id: 'north' },
    });
  });
});

describe('a dispatcher of one operator', () => {
  it('sees that operator and nobody else', async () => {
    await owner.record('iso-south', 0, [add('TW-SOU', { operatorId: 'south' })]);
    const north = await as('north@one.example');
    const seen = await north.data(`{
      mine: aircraft(id: "iso-plane") { registration } other: aircraft(id: "iso-south") { registration } operators { id }
      readyBoard(first: 500) { edges { node { aircraft { operator { id } } } } }
      findings(first: 500) { edges { node { aircraft { operator { id } } } } } }`);
    expect(seen.mine).toEqual({ registration: 'TW-ISO' });
    expect(seen.other).toBeNull();
    expect(seen.operators).toEqual([{ id: 'north' }]);
    const owners = [...seen.readyBoard.edges, ...seen.findings.edges].map(
      (edge: Data) => edge.node.aircraft.operator?.id,
    );
    expect(new Set(owners)).toEqual(new Set(['north']));
  });

  it('gets no names of staff and no history', async () => {
    const north = await as('north@one.example');
    expect((await north.data('{ aircraft(id: "iso-plane") { dossier } }')).aircraft.dossier).toBeNull();
    expect(await north.problem('{ aircraft(id: "iso-plane") { history { totalCount } } }')).toMatchObject({
      code: 'FORBIDDEN',
    });
  });
});
