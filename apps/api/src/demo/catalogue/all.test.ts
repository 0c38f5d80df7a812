import { equipmentType, readEntry } from '@tallywing/rules';
import type { EquipmentType } from '@tallywing/rules';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { demoTypeList } from './all.js';

/** Where the types show each closed list of the schema, by the list's name there. */
const shown: Readonly<Record<string, (type: EquipmentType) => readonly string[]>> = {
  FunctionCode: (type) => type.functions,
  SignalCode: (type) => type.ports.map(({ signal }) => signal),
  PortDirection: (type) => type.ports.map(({ direction }) => direction),
  PortStandard: (type) => type.ports.map(({ standard }) => standard),
  LimitationKind: (type) => type.limitations.map(({ kind }) => kind),
  CoolingKind: (type) => (type.cooling ? [type.cooling.by] : []),
  DatabaseKind: (type) => type.databases.map(({ kind }) => kind),
  Place: (type) => type.view?.approvedPlaces ?? [],
};

const { $defs = {} } = z.toJSONSchema(equipmentType);
const lists = Object.entries($defs).flatMap(([name, { enum: kinds }]) => (kinds ? [{ name, kinds }] : []));

it.each(demoTypeList.map((type) => [type.name, type] as const))(
  '%s is an entry that a person may save',
  (_name, type) => {
    const { id: _id, ...entry } = type;
    expect(readEntry(entry)).toMatchObject({ ok: true });
  },
);

describe('the demo has a type of every kind that the schema knows', () => {
  it.each(lists)('$name', ({ name, kinds }) => {
    const show = shown[name];
    if (!show) throw new Error(`${name} is a new list of the schema: say in this test where a type shows it.`);
    const there = new Set(demoTypeList.flatMap(show));
    expect(kinds.filter((kind) => !there.has(String(kind)))).toEqual([]);
  });

  it('asks of every list, and of no list that is gone', () => {
    expect(lists.map(({ name }) => name).sort()).toEqual(Object.keys(shown).sort());
  });

  it.each<[what: string, is: (type: EquipmentType) => boolean]>([
    ['an authorisation with a class', ({ authorisations }) => authorisations.some((each) => each.class !== null)],
    ['an authorisation without a class', ({ authorisations }) => authorisations.some((each) => each.class === null)],
    ['no authorisation at all', ({ authorisations }) => authorisations.length === 0],
    ['a face in the panel', ({ bezel }) => bezel !== null],
    ['no face in the panel', ({ bezel }) => bezel === null],
    ['a manual that is silent on the place', ({ view }) => view === null],
    ['a manual that is silent on cooling', ({ cooling }) => cooling === null],
    ['a joint approved at one software only', ({ pairs }) => pairs.some(({ software }) => software !== null)],
    ['a limitation of other units', ({ limitations }) => limitations.some(({ elsewhere }) => elsewhere)],
    ['a limitation of places', ({ limitations }) => limitations.some(({ places }) => places.length > 0)],
  ])('%s', (_, is) => {
    expect(demoTypeList.some(is)).toBe(true);
  });
});

describe('the types', () => {
  it('are thirty at least, so that there is something to choose from', () => {
    expect(demoTypeList.length).toBeGreaterThanOrEqual(30);
  });

  it('are as the schema says, each with a family and a part number of its own', () => {
    for (const type of demoTypeList) expect(equipmentType.safeParse(type).error?.message).toBeUndefined();
    for (const key of ['id', 'family', 'partNumber'] as const)
      expect(new Set(demoTypeList.map((type) => type[key])).size).toBe(demoTypeList.length);
  });

  it('approve joints of signals that they have, with families that there are', () => {
    const families = new Set(demoTypeList.map(({ family }) => family));
    const astray = demoTypeList.flatMap(({ name, pairs, ports }) =>
      pairs
        .filter(({ family, signals }) => {
          const own = new Set(ports.map(({ signal }) => signal));
          return !families.has(family) || signals.some((signal) => !own.has(signal));
        })
        .map(({ family, signals }) => `${name} with ${family}: ${signals.join(', ')}`),
    );
    expect(astray).toEqual([]);
  });
});
