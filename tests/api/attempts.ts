import {
  getNamedType,
  getNullableType,
  isEnumType,
  isInputObjectType,
  isListType,
  isNonNullType,
  isObjectType,
} from 'graphql';
import type { GraphQLArgument, GraphQLField, GraphQLInputField, GraphQLInputType, GraphQLObjectType } from 'graphql';

import { password } from './cast.js';

export interface Attempt {
  readonly query: string;
  readonly variables: Readonly<Record<string, unknown>>;
}

/** Names of real rows, by the kind of row: `aircraft` -> `iso-plane`. */
export type Ids = ReadonlyMap<string, string>;

/**
 * Where the first value that comes to mind would be refused before anybody looks for the row: values by the name of the
 * argument or input field.
 */
const inAWeek = `${new Date(Date.now() + 7 * 86_400_000).toISOString().slice(0, 10)}T12:00Z`;
const sensible: Readonly<Record<string, unknown>> = {
  role: 'DISPATCHER',
  email: 'guess@two.example',
  password: 'a-guess-of-enough-letters',
  current: password,
  next: password,
  zone: 'UTC',
  rules: 'IFR',
  checkedOn: '2026-01-01',
  goodUntil: '2027-01-01',
  draft: '{}',
  draftSchema: 1,
  first: 20,
  until: inAWeek,
  readingAge: { days: 20, noticeDays: null },
};

/**
 * One operation with every argument filled in as somebody would who knows the ids of another house: once for each kind of row
 * that a plain `id` could mean, else once.
 */
export function attemptsAt(
  kind: 'query' | 'mutation' | 'subscription',
  field: GraphQLField<unknown, unknown>,
  ids: Ids,
): Attempt[] {
  const kinds = field.args.some((argument) => namesAnyRow(argument, ids)) ? [...ids.keys()] : ['aircraft'];
  return kinds.map((meant) => {
    const given = field.args.filter((argument) => isWanted(argument));
    const declared = given.map((argument) => `$${argument.name}: ${String(argument.type)}`).join(', ');
    const passed = given.map((argument) => `${argument.name}: $${argument.name}`).join(', ');
    const inner = getNamedType(field.type);
    return {
      query: `${kind} ${declared === '' ? '' : `(${declared})`} { ${field.name}${passed === '' ? '' : `(${passed})`} ${
        isObjectType(inner) ? `{ ${everything(inner, 3)} __typename }` : ''
      } }`,
      variables: Object.fromEntries(
        given.map((argument) => [argument.name, guess(argument.type, argument.name, ids, meant)]),
      ),
    };
  });
}

/** Every field of a type that needs no argument, some levels deep, so that whatever can leak is asked for. */
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

type Place = GraphQLArgument | GraphQLInputField;

const isWanted = ({ name, type }: Place): boolean =>
  isNonNullType(type) || isId(type) || name in sensible || holdsId(type, 2);

const isId = (type: GraphQLInputType): boolean => getNamedType(type).name === 'ID';

function holdsId(type: GraphQLInputType, depth: number): boolean {
  const named = getNamedType(type);
  if (!isInputObjectType(named) || named.isOneOf || depth === 0) return false;
  return Object.values(named.getFields()).some((field) => isId(field.type) || holdsId(field.type, depth - 1));
}

/** An id whose name does not say of what. */
function namesAnyRow(place: Place, ids: Ids): boolean {
  const named = getNamedType(place.type);
  if (isId(place.type)) return idFor(place.name, ids) === undefined;
  if (!isInputObjectType(named) || named.isOneOf) return false;
  return Object.values(named.getFields()).some((field) => isWanted(field) && namesAnyRow(field, ids));
}

/** `testSetId` is a row of test_sets, `profile` one of flight_profiles, `personId` one of members. */
function idFor(name: string, ids: Ids): string | undefined {
  const word = name
    .replace(/Ids?$/, '')
    .replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
    .replace('person', 'member')
    .replace(/^expected$/, 'type');
  const plural = [`${word}s`, `${word.replace(/y$/, 'ie')}s`, word];
  const table = [...ids.keys()].find((each) => plural.some((one) => each === one || each.endsWith(`_${one}`)));
  return table === undefined ? undefined : ids.get(table);
}

function guess(type: GraphQLInputType, name: string, ids: Ids, meant: string): unknown {
  const bare = getNullableType(type);
  if (name === 'changes') return [{ holdLift: { holdId: 'iso', at: '2026-01-01T00:00Z', reason: 'taken over' } }];
  if (isListType(bare)) return [guess(bare.ofType, name, ids, meant)];
  if (isId(bare)) return idFor(name, ids) ?? ids.get(meant);
  if (name in sensible) return sensible[name];
  if (isEnumType(bare)) return bare.getValues()[0]?.name;
  if (isInputObjectType(bare)) {
    const fields = Object.values(bare.getFields());
    const chosen = bare.isOneOf ? fields.slice(0, 1) : fields.filter((field) => isWanted(field));
    return Object.fromEntries(chosen.map((field) => [field.name, guess(field.type, field.name, ids, meant)]));
  }
  if (name === 'job') return 'vor-check';
  if (name === 'kind') return 'reading-age';
  switch (getNamedType(bare).name) {
    case 'Boolean':
      return true;
    case 'Int':
    case 'Float':
      return 1;
    case 'Instant':
      return '2026-01-01T00:00Z';
    case 'CivilDate':
      return name === 'from' ? inAWeek.slice(0, 10) : '2026-01-01';
    case 'JSON':
      return {};
    default:
      // Never the same twice: some names may be taken once only, and keys used once.
      return `${name}-${Math.random().toString(36).slice(2)}`;
  }
}
