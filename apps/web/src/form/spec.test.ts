import { changeDefinitions, changeSchema } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { blank, specBeside, specOf, type Spec } from './spec.js';
import { valueAt, withValueAt } from './tree.js';

function specFor(kind: string): Spec {
  const schema = changeSchema(kind);
  if (!schema) throw new Error(`no schema for ${kind}`);
  return specOf(schema);
}

function at(spec: Spec, path: string): Spec | undefined {
  return path.split('.').reduce<Spec | undefined>((found, name) => {
    if (found?.kind === 'list') return found.of;
    return found?.kind === 'object' ? found.fields.find((field) => field.name === name)?.spec : undefined;
  }, spec);
}

test.each(changeDefinitions.map((definition) => definition.kind))('%s can be shown as a form', (kind) => {
  const spec = specFor(kind);
  expect(spec.kind).toBe('object');
  expect(blank(spec)).toBeTypeOf('object');
});

test('days, moments, hours and choices are told apart', () => {
  const spec = specFor('record.add');
  expect(at(spec, 'record.done.date')).toEqual({ kind: 'date', nullable: false });
  expect(at(spec, 'record.done.at')).toEqual({ kind: 'instant', nullable: true });
  expect(at(spec, 'record.dueAt')).toEqual({ kind: 'hours', nullable: true });
  expect(at(spec, 'record.evidence')).toMatchObject({ kind: 'choice', values: ['entry-seen', 'reported', 'assumed'] });
  expect(at(spec, 'record.note')).toEqual({ kind: 'text', nullable: true, long: true });
  expect(at(spec, 'record.enRoute')).toEqual({ kind: 'yes-no', nullable: true });
  expect(at(spec, 'record.readings.altimeter.scaleError.0.atFt')).toEqual({
    kind: 'number',
    nullable: false,
    whole: true,
    min: -2000,
    max: 60_000,
  });
  expect(at(spec, 'record.readings.vor.indicatedDeg')).toMatchObject({
    kind: 'number',
    whole: false,
    min: 0,
    max: 360,
  });
  expect(at(specFor('unit.install'), 'touched')).toMatchObject({ kind: 'many' });
  expect(at(specFor('meter.read'), 'dial')).toEqual({ kind: 'hours', nullable: false });
});

test('a blank form records nothing: unrecorded is null, never a made-up value', () => {
  expect(blank(specFor('meter.read'))).toEqual({ meter: '', dial: null, asOf: '', by: '' });
  expect(blank(specFor('hold.place'))).toEqual({ hold: { id: '', reason: '', by: '', from: '', until: null } });
});

test('one place is written, the rest and the original stay', () => {
  const value = { record: { subjects: ['a', 'b'], note: null } };
  const next = withValueAt(value, 'record.subjects.1', 'c');
  expect(next).toEqual({ record: { subjects: ['a', 'c'], note: null } });
  expect(value.record.subjects).toEqual(['a', 'b']);
  expect(valueAt(next, 'record.subjects.1')).toBe('c');
  expect(valueAt(next, 'record.nothing.here')).toBeUndefined();
});

test('the number of an interval is hours where its kind says so, and a plain number else', () => {
  const item = specFor('recurring.set');
  const number = part(item, 'count');
  expect(number).toMatchObject({ kind: 'number', whole: true });
  expect(specBeside(number, { kind: 'hours' })).toEqual({ kind: 'hours', nullable: false });
  for (const kind of ['landings', 'days', 'calendar-months', null]) expect(specBeside(number, { kind })).toBe(number);
  const meter = part(item, 'meter');
  expect(specBeside(meter, { kind: 'hours' })).toBe(meter);
});

function part(item: Spec, name: string): Spec {
  const found = at(item, `item.parts.0.${name}`);
  if (!found) throw new Error(`no field ${name}`);
  return found;
}
