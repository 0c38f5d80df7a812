/* Writes the types of the GraphQL API for the board from the SDL under apps/api/src (the contract). */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { minifyIntrospection, outputIntrospectionFile } from '@gql.tada/internal';
import { buildSchema, introspectionFromSchema } from 'graphql';

const root = fileURLToPath(new URL('../..', import.meta.url));
const sdlHome = join(root, 'apps/api/src');
export const output = join(root, 'apps/web/src/graphql-schema.d.ts');

/** The text of the generated file, for the writer here and for the drift check. */
export function webTypes() {
  const files = readdirSync(sdlHome, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.graphql'))
    .sort();
  if (files.length === 0) throw new Error(`No .graphql file under ${sdlHome}: the API's SDL is missing.`);
  const schema = buildSchema(files.map((file) => readFileSync(join(sdlHome, file), 'utf8')).join('\n'));
  // isOneOf is not asked by default, and without it a change input would accept two kinds at once.
  const introspection = introspectionFromSchema(schema, { oneOf: true });
  return outputIntrospectionFile(minifyIntrospection(introspection, { includeScalars: true }), {
    fileType: '.d.ts',
    shouldPreprocess: true,
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(output, webTypes());
  console.log('apps/web/src/graphql-schema.d.ts written from the SDL');
}
