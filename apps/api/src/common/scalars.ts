import { GraphQLError, GraphQLScalarType, Kind, valueFromASTUntyped } from 'graphql';
import type { ValueNode } from 'graphql';

function textScalar(
  name: string,
  description: string,
  check: (text: string) => boolean,
  example: string,
): GraphQLScalarType<string, string> {
  const read = (value: unknown): string => {
    if (typeof value === 'string' && check(value)) return value;
    throw new GraphQLError(`${name} cannot be ${JSON.stringify(value)}. Write it like ${example}.`, {
      extensions: { code: 'BAD_USER_INPUT' },
    });
  };
  return new GraphQLScalarType<string, string>({
    name,
    description,
    serialize: (value) => String(value),
    parseValue: read,
    parseLiteral: (node: ValueNode) => read(node.kind === Kind.STRING ? node.value : valueFromASTUntyped(node)),
  });
}

const realDay = (text: string): boolean => {
  const [year = 0, month = 0, day = 0] = text.slice(0, 10).split('-').map(Number);
  return month >= 1 && month <= 12 && day >= 1 && day <= new Date(Date.UTC(year, month, 0)).getUTCDate();
};

export const scalars = {
  Instant: textScalar(
    'Instant',
    'A moment in UTC to the minute, such as 2026-03-01T14:30Z.',
    (text) => /^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\dZ$/.test(text) && realDay(text),
    '2026-03-01T14:30Z',
  ),
  CivilDate: textScalar(
    'CivilDate',
    'A day of the calendar without a zone, such as 2026-03-01.',
    (text) => /^\d{4}-\d\d-\d\d$/.test(text) && realDay(text),
    '2026-03-01',
  ),
  JSON: new GraphQLScalarType({
    name: 'JSON',
    description: 'A document in the form of the rule library.',
    serialize: (value) => value,
  }),
};

/** `flight-school` is written FLIGHT_SCHOOL in GraphQL: upper case, everything but letters and digits as `_`. */
export function enumName(value: string): string {
  const name = value.toUpperCase().replace(/[^A-Z0-9]/g, '_');
  return /^[0-9]/.test(name) ? `_${name}` : name;
}

/** The inner values of a GraphQL enum, for the resolver map. */
export function enumValues(values: readonly string[]): Record<string, string> {
  return Object.fromEntries(values.map((value) => [enumName(value), value]));
}
