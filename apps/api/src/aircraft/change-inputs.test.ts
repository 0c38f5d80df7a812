import { changeDefinitions, changeSchema } from '@tallywing/rules';
import { coerceInputValue } from 'graphql';
import type { GraphQLInputType } from 'graphql';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { changeInput, schema } from '../../../../tests/api/inputs.js';
import { enumName } from '../common/scalars.js';
import { readChangeInput } from './change-inputs.js';
import { changeEnums } from './changes.generated.js';

type Json = { [key: string]: Json } & {
  $ref?: string;
  $defs?: Record<string, Json>;
  type?: string | string[];
  anyOf?: Json[];
  enum?: string[];
  properties?: Record<string, Json>;
  items?: Json;
};

/** A value of the schema: everything given, with the nth word of each list; or everything that may be left out left out. */
function sample(node: Json, defs: Record<string, Json>, pick: number | 'nothing'): unknown {
  if (node.$ref) return sample(defs[node.$ref.split('/').at(-1) ?? ''] ?? {}, defs, pick);
  const nullable =
    node.anyOf?.some((each) => each.type === 'null') ?? (Array.isArray(node.type) && node.type.includes('null'));
  if (nullable && pick === 'nothing') return null;
  if (node.anyOf) return sample(node.anyOf.find((each) => each.type !== 'null') ?? {}, defs, pick);
  if (node.enum) return node.enum[(pick === 'nothing' ? 0 : pick) % node.enum.length];
  const type = Array.isArray(node.type) ? node.type.find((each) => each !== 'null') : node.type;
  if (type === 'object')
    return Object.fromEntries(
      Object.entries(node.properties ?? {}).map(([name, field]) => [name, sample(field as Json, defs, pick)]),
    );
  if (type === 'array')
    return pick === 'nothing'
      ? []
      : [sample(node.items as Json, defs, pick), sample(node.items as Json, defs, pick + 1)];
  if (type === 'boolean') return pick === 1;
  return type === 'string' ? 'text' : type === 'integer' ? 7 : 7.25;
}

/** What the server's enum values do: the SDL's words become the core's own. */
const withInnerValues = (): void => {
  for (const [name, values] of Object.entries(changeEnums)) {
    const type = schema.getType(name) as unknown as {
      _valueLookup: unknown;
      getValues(): { name: string; value: unknown }[];
    };
    for (const each of type.getValues()) each.value = values.find((value) => enumName(value) === each.name);
  }
};

describe('change inputs', () => {
  withInnerValues();
  const type = schema.getType('ChangeInput') as GraphQLInputType;
  it.each(changeDefinitions.map(({ kind, version }) => [kind, version] as const))(
    '%s survives the way over the wire',
    (kind, version) => {
      const json = z.toJSONSchema(changeSchema(kind, version) ?? z.object({}), {
        io: 'input',
        unrepresentable: 'any',
      }) as Json;
      for (const pick of [0, 1, 2, 5, 'nothing'] as const) {
        const change = { kind, version, ...(sample(json, json.$defs ?? {}, pick) as object) };
        const sent = JSON.parse(JSON.stringify(changeInput(change))) as unknown;
        const arrived = coerceInputValue(sent, type) as Record<string, unknown>;
        expect(readChangeInput(JSON.parse(JSON.stringify(arrived)) as Record<string, unknown>, 0)).toEqual(change);
      }
    },
  );

  it('takes a field left out for null', () => {
    const change = readChangeInput(
      { holdPlace: { hold: { id: 'h', reason: 'r', by: 'b', from: '2026-01-01T00:00Z' } } },
      0,
    );
    expect(change).toEqual({
      kind: 'hold.place',
      version: 1,
      hold: { id: 'h', reason: 'r', by: 'b', from: '2026-01-01T00:00Z', until: null },
    });
  });

  it.each([[{}], [{ nothing: {} }], [{ holdPlace: null }]])('refuses %o', (input) => {
    expect(() => readChangeInput(input, 3)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ field: 'input.changes.3' }) }),
    );
  });

  it('knows every word of every list', () => {
    for (const values of Object.values(changeEnums)) expect(new Set(values.map(enumName)).size).toBe(values.length);
  });
});
