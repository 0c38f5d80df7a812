import { Linter } from 'eslint';
import { describe, expect, test } from 'vitest';
import { checkImport } from './boundaries.mjs';
import { clockFree } from './clock-free.mjs';

const refused = [
  ['libs/rules/src/facts/wire.ts', '../time/instant.js', 'facts may import nothing, not time'],
  ['libs/rules/src/time/zones.ts', '../dossier/dossier.js', 'time may import facts, not dossier'],
  ['libs/rules/src/changes/unit.ts', '../rules/rule.js', 'changes may import'],
  ['libs/rules/src/verdict/build.ts', '../assess/assess.js', 'verdict may import'],
  ['libs/rules/src/rules/electrical/bus-load.ts', './bus-name.js', 'A rule imports no other rule'],
  ['libs/rules/src/rules/electrical/bus-load.ts', '../databases/expired.js', 'A rule imports no other rule'],
  ['libs/rules/src/rules/electrical/bus-load.ts', '../registry.js', 'A rule imports no other rule'],
  ['libs/rules/src/assess/assess.ts', '../index.js', 'nothing inside imports it'],
  ['libs/rules/src/elsewhere/x.ts', '../facts/wire.js', 'not in the table of areas'],
  ['libs/rules/src/time/zones.ts', 'node:fs', 'imports nothing from outside but zod'],
  ['libs/rules/src/time/zones.ts', 'temporal-polyfill', 'imports nothing from outside but zod'],
  ['libs/rules/src/time/zones.ts', '../../testing/tester.js', 'imports nothing from outside itself'],
  ['apps/web/src/features/job/screen.tsx', '../findings/query.js', 'imports no other feature'],
  ['apps/web/src/features/job/screen.tsx', '@tallywing/rules/dist/time/zones.js', "from '@tallywing/rules' itself"],
  ['apps/web/src/features/job/screen.tsx', '../../../../../libs/rules/src/index.js', 'only its public face'],
  ['apps/web/src/features/job/screen.tsx', '@tallywing/api', 'through GraphQL alone'],
  ['apps/web/src/ui/table.tsx', '../features/job/query.js', 'knows no screen'],
  ['apps/web/src/form/field-view.tsx', '../features/job/options.js', 'knows no screen'],
  ['apps/api/src/fleet/fleet.service.ts', 'pg', 'Only *.data.ts and src/database'],
  ['apps/api/src/fleet/fleet.service.ts', '@prisma/client', 'Only *.data.ts and src/database'],
  ['apps/api/src/fleet/fleet.service.ts', '../database/prisma-client/client.js', 'the generated client'],
];

const allowed = [
  ['libs/rules/src/time/zones.ts', '../facts/source.js'],
  ['libs/rules/src/time/zones.ts', './zone-data.js'],
  ['libs/rules/src/dossier/readings.ts', 'zod'],
  ['libs/rules/src/rules/electrical/bus-load.ts', '../rule.js'],
  ['libs/rules/src/rules/registry.ts', './electrical/bus-load.js'],
  ['libs/rules/src/index.ts', './assess/assess.js'],
  ['apps/web/src/features/job/screen.tsx', '../../ui/table.js'],
  ['apps/web/src/features/job/screen.tsx', '../../form/spec.js'],
  ['apps/web/src/features/job/screen.tsx', './query.js'],
  ['apps/web/src/app/router.tsx', '../features/job/screen.js'],
  ['apps/web/src/features/job/view-model.ts', '@tallywing/rules'],
  ['apps/api/src/fleet/fleet.data.ts', 'pg'],
  ['apps/api/src/database/open.ts', '@prisma/adapter-pg'],
  ['apps/api/src/fleet/fleet.service.ts', './fleet.data.js'],
];

describe('boundaries between the packages and their parts', () => {
  test.each(refused)('%s may not import %s', (file, name, message) => {
    expect(checkImport(file, name)).toContain(message);
  });
  test.each(allowed)('%s may import %s', (file, name) => {
    expect(checkImport(file, name)).toBeUndefined();
  });
});

describe('the rule library reads no clock and does no I/O', () => {
  const messages = (code) =>
    new Linter().verify(code, [{ files: ['**/*.js'], ...clockFree }], 'a.js').map(({ message }) => message);

  test.each([
    'export const a = Date.now();',
    'export const a = new Date();',
    'export const a = Date();',
    'export const a = (text) => new Date(text).getHours();',
    'export const a = new Intl.DateTimeFormat();',
    'export const a = Temporal.Now.instant();',
    'export const a = (one, other) => one.localeCompare(other);',
    'export const a = Math.random();',
    'export const a = process.env.TZ;',
    'export const a = fetch("/x");',
    'export const a = performance.now();',
    'setTimeout(() => undefined, 1);',
    'console.log(1);',
    'export const a = (1).toLocaleString();',
    'export const a = globalThis.process;',
    'export const a = import.meta.url;',
  ])('%s is refused', (code) => {
    expect(messages(code)).toHaveLength(1);
  });
  test('a moment and a zone from arguments are fine', () => {
    expect(messages('export const a = (moment, zone) => [moment.slice(0, 10), zone];')).toEqual([]);
  });
});
