import { aircraftFileSchema, blankDossier, readAircraftFile, replay } from '@tallywing/rules';
import type { Catalogue, Change } from '@tallywing/rules';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { contentHash } from '../common/canonical.js';
import { demoTypeList } from '../demo/catalogue/all.js';
import { Days } from '../demo/days.js';
import { secondFleet, shopFleet } from '../demo/fleet.js';
import { live } from '../demo/life.js';
import { takenOver } from './taken-over.js';

const today = '2026-11-25';
const now = `${today}T23:00Z`;
const catalogue: Catalogue = {
  version: 'demo',
  types: Object.fromEntries(demoTypeList.map((type) => [type.id, type])),
};
const fleet = [...shopFleet, ...secondFleet].map((spec) => {
  const { entries, aircraftId } = live(spec, new Days(today));
  return { registration: spec.registration, aircraftId, changes: entries.map(({ change }) => change) };
});

function fileOf({ registration, changes, aircraftId }: (typeof fleet)[number]): Record<string, unknown> {
  return {
    format: 'tallywing-aircraft-records',
    version: 1,
    exportedAt: '2026-11-25T22:00:00.000Z',
    house: 'Orrin Vale Avionics',
    aircraft: [
      {
        registration,
        record: replay(changes, aircraftId),
        entries: changes.map((change, index) => ({
          number: index + 1,
          recordedAt: '2026-11-25T22:00:00.000Z',
          by: 'Wenna Tarrant',
          change,
        })),
      },
    ],
    operators: [],
    types: demoTypeList.map((type) => ({ type, supersededBy: null })),
  };
}

/** As it comes out at the other end of a wire. */
function readBack(file: unknown) {
  const read = readAircraftFile(JSON.parse(JSON.stringify(file)));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [aircraft] = read.file.aircraft;
  if (!aircraft) throw new Error('no aircraft came back');
  return { ...aircraft, file: 'f.json', path: 'aircraft.0' };
}

const anyAircraft = fc.constantFrom(...fleet);
const after = (changes: readonly Change[], count: number) => replay(changes.slice(0, count), 'here');

describe('an aircraft record that goes out and comes in', () => {
  it.each(fleet.map((each) => [each.registration, each] as const))('%s is the same again', (_, each) => {
    const found = takenOver(readBack(fileOf(each)), blankDossier('here'), null, catalogue, now);
    expect(found.changes).toEqual(each.changes);
    expect(found.dossier).toEqual(replay(each.changes, 'here'));
  });

  it('adds to what is there what came since, from wherever it stopped', () => {
    fc.assert(
      fc.property(anyAircraft, fc.nat(), (each, some) => {
        const count = some % (each.changes.length + 1);
        const stored = count === 0 ? blankDossier('here') : after(each.changes, count);
        const found = takenOver(readBack(fileOf(each)), stored, null, catalogue, now);
        expect(found.changes).toEqual(each.changes.slice(count));
        expect(contentHash(found.dossier)).toBe(contentHash(after(each.changes, each.changes.length)));
      }),
      { numRuns: 25 },
    );
  });

  it('takes nothing back where this house has gone on since', () => {
    fc.assert(
      fc.property(anyAircraft, fc.nat(), (each, some) => {
        const count = 1 + (some % (each.changes.length - 1));
        const older = { ...each, changes: each.changes.slice(0, count) };
        const hash = contentHash(after(each.changes, count));
        const stored = after(each.changes, each.changes.length);
        expect(takenOver(readBack(fileOf(older)), stored, hash, catalogue, now)).toEqual({
          dossier: stored,
          changes: [],
          older: true,
        });
      }),
      { numRuns: 15 },
    );
  });

  it('is not mixed with another history', () => {
    const [each, other] = fleet;
    if (!each || !other) throw new Error('the demo has no two aircraft');
    const strange = after(other.changes, other.changes.length);
    const take = () => takenOver(readBack(fileOf(each)), strange, 'other', catalogue, now);
    expect(take).toThrow(`${each.registration} is recorded here with another history.`);
  });

  it('is refused where the record is not what the entries give', () => {
    const [each] = fleet;
    if (!each) throw new Error('the demo has no aircraft');
    const read = readBack(fileOf(each));
    const record = structuredClone(read.record) as { configuration: { aircraft: { seats: number } } };
    record.configuration.aircraft.seats += 1;
    const take = () => takenOver({ ...read, record: record as never }, blankDossier('here'), null, catalogue, now);
    expect(take).toThrow('Its entries do not give the record that the file states.');
  });

  it('is refused at the entry that may not be recorded', () => {
    const [each] = fleet;
    if (!each) throw new Error('the demo has no aircraft');
    const none = { version: 'none', types: {} };
    expect(() => takenOver(readBack(fileOf(each)), blankDossier('here'), null, none, now)).toThrow(
      expect.objectContaining({ column: expect.stringMatching(/^aircraft\.0\.entries\.\d+\.change\.unit\.typeId$/) }),
    );
  });
});

describe('the form of the file', () => {
  const [each] = fleet;
  if (!each) throw new Error('the demo has no aircraft');
  const good = fileOf(each);
  const published = z.fromJSONSchema(aircraftFileSchema());
  const problems = (value: unknown) => {
    const read = readAircraftFile(value);
    return read.ok ? [] : read.problems.map(({ path }) => path);
  };
  const changed = (path: readonly (string | number)[], value: unknown) => {
    const file = JSON.parse(JSON.stringify(good)) as typeof good;
    const last = path.at(-1);
    const holder = path.slice(0, -1).reduce<unknown>((at, name) => (at as Record<string, unknown>)[name], file);
    if (value === undefined) Reflect.deleteProperty(holder as object, last ?? '');
    else (holder as Record<string, unknown>)[last ?? ''] = value;
    return file;
  };

  it.each([
    ['another format', ['format'], 'something-else', 'format'],
    ['a version that is not known', ['version'], 2, 'version'],
    ['a gap in the entries', ['aircraft', 0, 'entries', 1, 'number'], 7, 'aircraft.0.entries.1.number'],
    ['a field that the form does not have', ['more'], 1, ''],
    [
      'a kind of change that is not known',
      ['aircraft', 0, 'entries', 0, 'change', 'kind'],
      'x',
      'aircraft.0.entries.0.change.kind',
    ],
    [
      'a missing field of a change',
      ['aircraft', 0, 'entries', 0, 'change', 'aircraft', 'make'],
      undefined,
      'aircraft.0.entries.0.change.aircraft.make',
    ],
    ['another registration than the record has', ['aircraft', 0, 'registration'], 'TW-99Z', 'aircraft.0.registration'],
    ['no aircraft', ['aircraft'], [], 'aircraft'],
    ['a type without a name', ['types', 0, 'type', 'name'], undefined, 'types.0.type.name'],
  ])('refuses %s and names the place', (_, path, value, place) => {
    expect(problems(changed(path, value))).toEqual([place]);
  });

  it.each([[null], ['text'], [[]], [{}]])('refuses %j without falling over', (value) => {
    expect(problems(value).length).toBeGreaterThan(0);
  });

  it('is the one that the published schema describes', () => {
    expect(published.safeParse(good).success).toBe(true);
    expect(published.safeParse(changed(['version'], 2)).success).toBe(false);
    expect(
      published.safeParse(changed(['aircraft', 0, 'entries', 0, 'change', 'aircraft', 'make'], undefined)).success,
    ).toBe(false);
    expect(published.safeParse(changed(['aircraft', 0, 'record', 'configuration'], undefined)).success).toBe(false);
  });
});
