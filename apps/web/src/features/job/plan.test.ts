import { readFileSync } from 'node:fs';
import { blankDossier, changeDefinitions, changeSchema, replay, type Catalogue, type Change } from '@tallywing/rules';
import { buildSchema, isEnumType, isInputObjectType, isListType, isNonNullType, type GraphQLInputType } from 'graphql';
import { expect, test } from 'vitest';
import { blank, specOf, type Spec } from '../../form/spec.js';
import { formOf } from './kinds.js';
import { problemAt } from '../../form/problems.js';
import { inputOf } from '../../form/change-input.js';
import { planOf, type Step } from './plan.js';

const catalogue: Catalogue = { version: 'none', types: {} };
const now = '2026-11-25T12:00Z';
const start = {
  kind: 'aircraft.add',
  version: 1,
  aircraft: { ...blankDossier('a').configuration.aircraft, registration: 'TW-07Q', make: 'Corvane', model: 'C2' },
} as Change;
const meter = {
  kind: 'meter.define',
  version: 1,
  definition: { id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 },
  standsForTimeInService: true,
} as Change;
const dossier = replay([start, meter], 'a');

function read(key: string, dial: unknown, asOf = '2026-11-24T12:00Z'): Step {
  return { key, kind: 'meter.read', value: { meter: 'tach', dial, asOf, by: 'A. Person' } };
}

test('steps build on each other, as they will on the server', () => {
  const plan = planOf(dossier, catalogue, [read('1', 10_000), read('2', 12_000, '2026-11-25T11:00Z')], now);
  expect(plan.ready).toBe(true);
  expect(plan.after.meters.readings['tach']?.value).toBe(12_000);
  expect(plan.steps[1]?.before.meters.readings['tach']?.value).toBe(10_000);
});

test('hours that run backwards are refused at their field, with the way out, and leave nothing behind', () => {
  const plan = planOf(dossier, catalogue, [read('1', 10_000), read('2', 9_900, '2026-11-25T11:00Z')], now);
  expect(plan.ready).toBe(false);
  expect(plan.after.meters.readings['tach']?.value).toBe(10_000);
  expect(problemAt(plan.steps[1]?.problems ?? [], 'dial')).toMatch(/backwards.*Check the reading/);
});

test('an empty field asks to be filled in, text in a number field is named as such', () => {
  const empty = planOf(dossier, catalogue, [read('1', null)], now).steps[0]?.problems ?? [];
  expect(problemAt(empty, 'dial')).toBe('This is still empty. Fill it in.');
  const wrong = planOf(dossier, catalogue, [read('1', '12,5')], now).steps[0]?.problems ?? [];
  expect(problemAt(wrong, 'dial')).toBe('This is not a number.');
});

test('nothing planned is not ready to record', () => {
  expect(planOf(dossier, catalogue, [], now).ready).toBe(false);
});

/* The API's SDL is generated from the same schemas; a form must never produce what it does not take. */
const sdl = readFileSync(new URL('../../../../api/src/aircraft/changes.generated.graphql', import.meta.url), 'utf8');
const changeInput = buildSchema(`${sdl}\ntype Query { ok: Boolean }`).getType('ChangeInput');

function agree(type: GraphQLInputType, spec: Spec, path: string): void {
  if (isNonNullType(type)) return agree(type.ofType, spec, path);
  if (isListType(type)) {
    if (spec.kind === 'many') return agree(type.ofType, { kind: 'choice', nullable: false, values: spec.values }, path);
    expect(spec.kind, path).toBe('list');
    return spec.kind === 'list' ? agree(type.ofType, spec.of, path) : undefined;
  }
  if (isEnumType(type)) {
    expect(spec.kind, path).toBe('choice');
    const values = spec.kind === 'choice' ? spec.values : [];
    const sent = values.map((value) => inputOf({ kind: 'k', value }, spec)['k']);
    expect(sent, path).toEqual(type.getValues().map((value) => value.name));
  } else if (isInputObjectType(type)) {
    expect(spec.kind, path).toBe('object');
    const fields = spec.kind === 'object' ? spec.fields : [];
    expect(fields.map((field) => field.name).sort(), path).toEqual(Object.keys(type.getFields()).sort());
    for (const field of fields) {
      const inner = type.getFields()[field.name];
      if (inner) agree(inner.type, field.spec, `${path}.${field.name}`);
    }
  }
}

test.each(changeDefinitions.map((each) => each.kind))('%s: what the form sends is what the API takes', (kind) => {
  const schema = changeSchema(kind);
  if (!schema || !isInputObjectType(changeInput)) throw new Error('schema or SDL missing');
  const spec = specOf(schema);
  const name = Object.keys(inputOf({ kind, value: blank(spec) }, spec))[0] ?? '';
  const field = changeInput.getFields()[name];
  expect(field, name).toBeDefined();
  if (field) agree(field.type, spec, name);
});

test.each(changeDefinitions.map((each) => each.kind))('%s has a form whose paths exist', (kind) => {
  const schema = changeSchema(kind);
  if (!schema) throw new Error('schema missing');
  const paths = new Set(pathsOf(specOf(schema), ''));
  for (const path of [...formOf(kind).first, ...(formOf(kind).hidden ?? [])]) expect(paths).toContain(path);
});

function pathsOf(spec: Spec, at: string): string[] {
  if (spec.kind !== 'object') return [at];
  return [at, ...spec.fields.flatMap((field) => pathsOf(field.spec, at === '' ? field.name : `${at}.${field.name}`))];
}
