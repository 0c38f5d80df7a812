import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { buildSchema, getNamedType, getNullableType, isEnumType, isInputObjectType, isListType } from 'graphql';
import type { GraphQLInputType, GraphQLSchema } from 'graphql';

const sdlHome = fileURLToPath(new URL('../../apps/api/src', import.meta.url));

/** The contract as it is written, all parts together. */
export const schema: GraphQLSchema = buildSchema(
  readdirSync(sdlHome, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.graphql'))
    .map((file) => readFileSync(`${sdlHome}/${file}`, 'utf8'))
    .join('\n'),
);

/** `flight-school` is FLIGHT_SCHOOL: written here by hand once more, so that the API's own spelling is checked by it. */
export function spelled(value: string): string {
  const name = [...value.toUpperCase()].map((letter) => (/[A-Z0-9]/.test(letter) ? letter : '_')).join('');
  return /^\d/.test(name) ? `_${name}` : name;
}

/** A change as the core stores it, in the form of a ChangeInput. */
export function changeInput(change: { readonly kind: string }): Record<string, unknown> {
  const { kind, version: _version, ...fields } = change as { kind: string; version?: number };
  const [first = '', ...rest] = kind.split(/[.-]/);
  const name = first + rest.map((word) => word.slice(0, 1).toUpperCase() + word.slice(1)).join('');
  const oneOf = schema.getType('ChangeInput');
  const type = isInputObjectType(oneOf) ? oneOf.getFields()[name]?.type : undefined;
  if (type === undefined) throw new Error(`ChangeInput has no ${name}`);
  return { [name]: asInput(fields, type) };
}

/** Any value of the core in the form of the input type of that name. */
export function inputOf(value: unknown, type: string): Record<string, unknown> {
  const found = schema.getType(type);
  if (!isInputObjectType(found)) throw new Error(`there is no input ${type}`);
  return asInput(value, found) as Record<string, unknown>;
}

function asInput(value: unknown, type: GraphQLInputType): unknown {
  if (value === null || value === undefined) return null;
  const bare = getNullableType(type);
  if (isListType(bare)) return (value as unknown[]).map((item) => asInput(item, bare.ofType));
  const named = getNamedType(bare);
  if (isEnumType(named)) return spelled(value as string);
  if (!isInputObjectType(named)) return value;
  const fields = named.getFields();
  return Object.fromEntries(
    Object.entries(value as Record<string, unknown>).map(([name, field]) => {
      const found = fields[name];
      if (!found) throw new Error(`${named.name} has no field ${name}`);
      return [name, asInput(field, found.type)];
    }),
  );
}
