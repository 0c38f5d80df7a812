import 'reflect-metadata';
import { METHOD_METADATA } from '@nestjs/common/constants.js';
import { buildSchema } from 'graphql';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { AppModule } from '../app.module.js';
import type { Foundation } from '../app.module.js';
import { AppLog } from '../common/logging.js';
import { operations } from './operations.js';
import { routeName } from './operations.guard.js';

/** Doors that the code has, whoever made them. */
const doors = [...fields(), ...routes()];

it.each(doors)('%s says who may use it', (door) => {
  expect(
    operations[door],
    `Give ${door} a row in apps/api/src/identity/operations.ts: until then nobody may use it.`,
  ).toBeDefined();
});

it('names nothing that is not there', () => {
  expect(doors.length).toBeGreaterThan(60);
  expect(Object.keys(operations).filter((name) => !doors.includes(name))).toEqual([]);
});

function fields(): string[] {
  const home = fileURLToPath(new URL('..', import.meta.url));
  const sdl = readdirSync(home, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.graphql'))
    .map((file) => readFileSync(`${home}/${file}`, 'utf8'));
  const schema = buildSchema(sdl.join('\n'));
  return [schema.getQueryType(), schema.getMutationType(), schema.getSubscriptionType()].flatMap((type) =>
    Object.keys(type?.getFields() ?? {}).map((field) => `${type?.name}.${field}`),
  );
}

/** All routes of all controllers that the application is put together from. */
function routes(): string[] {
  const whole = AppModule.on({ log: new AppLog(() => undefined) } as Foundation);
  return controllersOf(whole, new Set()).flatMap((controller) => {
    const methods = Object.values(Object.getOwnPropertyDescriptors(controller.prototype as object));
    return methods
      .map(({ value }) => value as unknown)
      .filter(
        (method): method is object => typeof method === 'function' && Reflect.hasMetadata(METHOD_METADATA, method),
      )
      .map((method) => routeName(controller, method));
  });
}

type Class = abstract new (...values: never[]) => unknown;

function controllersOf(module: unknown, seen: Set<unknown>): Class[] {
  if (module === null || seen.has(module)) return [];
  seen.add(module);
  const dynamic = module as { module?: object; imports?: unknown[]; controllers?: Class[] };
  const place = typeof module === 'function' ? module : dynamic.module;
  const said = <T>(name: string): T[] => (place ? ((Reflect.getMetadata(name, place) as T[] | undefined) ?? []) : []);
  return [
    ...(dynamic.controllers ?? []),
    ...said<Class>('controllers'),
    ...[...(dynamic.imports ?? []), ...said('imports')].flatMap((each) => controllersOf(each, seen)),
  ];
}
