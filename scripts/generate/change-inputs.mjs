// Writes the GraphQL inputs for changes from the rule library's schemas, which are their only source: the SDL, and beside
// it what is needed to turn an input back into the library's own form.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format } from 'prettier';
import { z } from 'zod';

const root = new URL('../..', import.meta.url);
export const outputs = [
  'apps/api/src/aircraft/changes.generated.graphql',
  'apps/api/src/aircraft/changes.generated.ts',
];

/** `flight-school` becomes FLIGHT_SCHOOL; the API's own reading of names is tested against this by round trip. */
function enumName(value) {
  const name = value.toUpperCase().replace(/[^A-Z0-9]/g, '_');
  return /^[0-9]/.test(name) ? `_${name}` : name;
}

const capital = (name) => name[0].toUpperCase() + name.slice(1);
const camel = (kind) => kind.replace(/[.-]([a-z0-9])/g, (_, letter) => letter.toUpperCase());

class Inputs {
  types = new Map();
  enums = new Map();

  /** The GraphQL type of one JSON Schema node; `hint` names it where the schema itself does not. */
  typeOf(node, defs, hint) {
    const { schema, name, nullable } = resolve(node, defs);
    if (schema.enum) {
      this.keep(this.enums, name ?? hint, schema.enum);
      return { type: name ?? hint, nullable };
    }
    if (schema.type === 'object') {
      const title = `${name ?? hint}Input`;
      if (!this.types.has(title)) {
        this.types.set(title, null);
        this.types.set(title, this.fieldsOf(schema, defs, name ?? hint));
      }
      return { type: title, input: true, nullable };
    }
    if (schema.type === 'array') {
      const item = this.typeOf(schema.items, defs, `${hint}Item`);
      return { ...item, list: true, itemNullable: item.nullable, nullable };
    }
    const scalar = { string: 'String', integer: 'Int', number: 'Float', boolean: 'Boolean' }[schema.type];
    if (!scalar) throw new Error(`${hint}: a GraphQL input cannot say ${JSON.stringify(schema).slice(0, 200)}`);
    return { type: scalar, nullable };
  }

  fieldsOf(schema, defs, hint) {
    return Object.entries(schema.properties ?? {}).map(([name, node]) => ({
      name,
      ...this.typeOf(node, defs, `${hint}${capital(name)}`),
    }));
  }

  keep(map, name, values) {
    const known = map.get(name);
    if (known && known.join() !== values.join())
      throw new Error(`Two different lists are called ${name}; give one another id.`);
    map.set(name, values);
  }
}

/** Follows references and takes the null out of a union with null; anything else that is a union cannot be said. */
function resolve(node, defs, name, nullable = false) {
  if (node.$ref) {
    const id = node.$ref.split('/').at(-1);
    return resolve(defs[id], defs, id, nullable);
  }
  if (node.anyOf) {
    const rest = node.anyOf.filter((each) => each.type !== 'null');
    if (rest.length !== 1) throw new Error(`A union of ${rest.length} in ${name ?? 'a field'} cannot be an input.`);
    return resolve(rest[0], defs, name, nullable || rest.length < node.anyOf.length);
  }
  if (Array.isArray(node.type)) {
    const rest = node.type.filter((each) => each !== 'null');
    return { schema: { ...node, type: rest[0] }, name, nullable: nullable || rest.length < node.type.length };
  }
  return { schema: node, name, nullable };
}

const written = ({ type, list, itemNullable, nullable }) =>
  `${list ? `[${type}${itemNullable ? '' : '!'}]` : type}${nullable ? '' : '!'}`;

/** @returns {Promise<Map<string, string>>} the text of each generated file, by path */
export async function changeInputs() {
  const core = await import(new URL('libs/rules/dist/index.js', root).href);
  const inputs = new Inputs();
  const kinds = [];
  const newest = new Map();
  for (const each of core.changeDefinitions) {
    if ((newest.get(each.kind)?.version ?? 0) < each.version) newest.set(each.kind, each);
  }
  for (const { kind, version, schema } of newest.values()) {
    const json = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
    const field = camel(kind);
    const title = `${capital(field)}Change`;
    inputs.types.set(`${title}Input`, inputs.fieldsOf(json, json.$defs ?? {}, title));
    kinds.push({ field, kind, version, type: `${title}Input` });
  }
  const types = [...inputs.types].sort(([a], [b]) => (a < b ? -1 : 1));
  const enums = [...inputs.enums].sort(([a], [b]) => (a < b ? -1 : 1));
  const sdl = [
    '# Made by scripts/generate/change-inputs.mjs from the rule library. Change the schemas there, not this file.',
    '"One piece of recorded work or one recorded fact: exactly one field is given."',
    `input ChangeInput @oneOf {\n${kinds.map(({ field, type }) => `  ${field}: ${type}`).join('\n')}\n}`,
    ...types.map(
      ([name, fields]) => `input ${name} {\n${fields.map((each) => `  ${each.name}: ${written(each)}`).join('\n')}\n}`,
    ),
    ...enums.map(([name, values]) => `enum ${name} {\n${values.map((value) => `  ${enumName(value)}`).join('\n')}\n}`),
  ].join('\n\n');
  const shapes = Object.fromEntries(
    types.map(([name, fields]) => [
      name,
      Object.fromEntries(
        fields.map((each) => [
          each.name,
          {
            ...(each.input ? { type: each.type } : {}),
            ...(each.list ? { list: true } : {}),
            ...(each.nullable ? { nullable: true } : {}),
          },
        ]),
      ),
    ]),
  );
  const code = `// Made by scripts/generate/change-inputs.mjs from the rule library. Change the schemas there, not this file.
    export interface FieldShape { readonly type?: string; readonly list?: boolean; readonly nullable?: boolean }
    /** Which field of ChangeInput stands for which kind and version of change. */
    export const changeKinds: Readonly<Record<string, { readonly kind: string; readonly version: number; readonly type: string }>> =
      ${JSON.stringify(Object.fromEntries(kinds.map(({ field, ...rest }) => [field, rest])))};
    /** The fields of each input type; a field left out counts as null where it may. */
    export const inputShapes: Readonly<Record<string, Readonly<Record<string, FieldShape>>>> = ${JSON.stringify(shapes)};
    /** The library's own values of each enum, in the order of the SDL. */
    export const changeEnums: Readonly<Record<string, readonly string[]>> = ${JSON.stringify(Object.fromEntries(enums))};
  `;
  const style = { printWidth: 120, singleQuote: true, trailingComma: 'all' };
  return new Map([
    [outputs[0], await format(sdl, { ...style, parser: 'graphql' })],
    [outputs[1], await format(code, { ...style, parser: 'typescript' })],
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [path, text] of await changeInputs()) writeFileSync(new URL(path, root), text);
  console.log('change inputs written from the rule library');
}
