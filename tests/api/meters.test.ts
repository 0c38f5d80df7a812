import { beforeAll, describe, expect, it } from 'vitest';
import { add, daysAgo, defineMeter, readMeter } from './cast.js';
import type { Client, Data } from './client.js';
import { as } from './people.js';

const sheet = `query ($filter: AircraftFilter, $first: Int, $after: String) {
  meterSheet(filter: $filter, first: $first, after: $after) {
    totalCount pageInfo { hasNextPage endCursor }
    edges { node { aircraft { id registration operator { id } } revision hoursPerMonth readingGoodForDays ownReadingAge
      meters { id name kind timeInService perFlightHour offset hours asOf goodBefore } } } } }`;

let technician: Client;
const own = { text: 'TW-M' };

const rowsOf = async (client: Client, variables: Record<string, unknown> = { filter: own }): Promise<Data[]> =>
  (await client.data(sheet, variables)).meterSheet.edges.map((edge: Data) => edge.node);

beforeAll(async () => {
  technician = await as('technician@one.example');
  const at = `${daysAgo(2)}T12:00Z`;
  const other = { ...defineMeter('hour-meter'), standsForTimeInService: false };
  const use = { perMonth: 3000, readingGoodForDays: 10 };
  const work: Record<string, readonly { kind: string }[]> = {
    'meter-a': [add('TW-M1Q', { operatorId: 'north' }), defineMeter(), other, readMeter(100_000, at)],
    'meter-b': [
      add('TW-M2Q'),
      defineMeter(),
      readMeter(120_000, `${daysAgo(20)}T12:00Z`),
      { kind: 'utilisation.set', version: 1, utilisation: use } as { kind: string },
    ],
    'meter-c': [
      add('TW-M3Q'),
      defineMeter(),
      other,
      readMeter(50_000, `${daysAgo(5)}T12:00Z`, 'hour-meter'),
      readMeter(60_000, at),
      { kind: 'meter.replace', version: 1, meter: 'tach', oldDial: 60_050, newDial: 0, at, by: 'Hangar log' } as {
        kind: string;
      },
    ],
    'meter-d': [add('TW-M4Q')],
  };
  for (const [id, changes] of Object.entries(work))
    expect((await technician.record(id, 0, changes)).errors).toBeUndefined();
});

describe('the sheet of meters', () => {
  it('has every aircraft with every meter, its last reading and until when that is good', async () => {
    const [a, b, c, d] = await rowsOf(technician);
    const day = (days: number) => `${daysAgo(days)}T12:00Z`;
    expect([a, b, c, d].map((row) => row.aircraft.id)).toEqual(['meter-a', 'meter-b', 'meter-c', 'meter-d']);
    expect(a).toMatchObject({ revision: 4, hoursPerMonth: null, readingGoodForDays: 31, ownReadingAge: null });
    expect(a.meters).toEqual([
      expect.objectContaining({ id: 'hour-meter', timeInService: false, hours: null, asOf: null, goodBefore: null }),
      {
        id: 'tach',
        name: 'Tachometer',
        kind: 'tachometer',
        timeInService: true,
        perFlightHour: 1,
        offset: 0,
        hours: 1000,
        asOf: day(2),
        goodBefore: day(-29),
      },
    ]);
    // As the aircraft itself states it: ten days, so that this one grew too old ten days ago.
    expect(b).toMatchObject({
      hoursPerMonth: 30,
      readingGoodForDays: 10,
      ownReadingAge: 10,
      meters: [{ goodBefore: day(10) }],
    });
    // A new dial carries the hours on; a meter that was not read with it is good for nothing.
    expect(c.meters).toMatchObject([
      { id: 'hour-meter', hours: 500, goodBefore: null },
      { id: 'tach', hours: 600.5, offset: 600.5 },
    ]);
    expect(d.meters).toEqual([]);
  });

  it('comes in pages', async () => {
    const first = (await technician.data(sheet, { filter: own, first: 3 })).meterSheet;
    expect([first.totalCount, first.edges.length, first.pageInfo.hasNextPage]).toEqual([4, 3, true]);
    const rest = await rowsOf(technician, { filter: own, first: 3, after: first.pageInfo.endCursor });
    expect(rest.map((row) => row.aircraft.id)).toEqual(['meter-d']);
    expect(await technician.problem(sheet, { after: 'x' })).toMatchObject({ code: 'BAD_INPUT', field: 'after' });
  });

  it('shows a dispatcher of one operator that operator only, and nobody else what is not theirs', async () => {
    const north = await rowsOf(await as('north@one.example'));
    expect(north.map((row) => row.aircraft.id)).toEqual(['meter-a']);
    expect(await rowsOf(await as('manager@two.example'))).toEqual([]);
    expect(await (await as(null)).problem(sheet)).toMatchObject({ code: 'SIGNED_OUT' });
  });

  it('takes filters together', async () => {
    const rows = await rowsOf(technician, { filter: { ...own, operatorId: 'north', baseId: 'field' } });
    expect(rows.map((row) => row.aircraft.id)).toEqual(['meter-a']);
    expect(await rowsOf(technician, { filter: { ...own, baseId: 'elsewhere' } })).toEqual([]);
  });
});

describe('a meter on the sheet', () => {
  it('is replaced, corrected and defined anew, and the hours go on', async () => {
    const at = `${daysAgo(3)}T12:00Z`;
    const start = [add('TW-W1Q'), defineMeter(), readMeter(100_000, at)];
    expect((await technician.record('meter-work', 0, start)).errors).toBeUndefined();
    const tach = async (): Promise<Data> => (await rowsOf(technician, { filter: { text: 'TW-W1Q' } }))[0].meters[0];
    const kind = (of: string, fields: object) =>
      ({ kind: of, version: 1, by: 'Hangar log', ...fields }) as { kind: string };
    await technician.record('meter-work', 3, [
      kind('meter.replace', { meter: 'tach', oldDial: 100_100, newDial: 50, at: `${daysAgo(2)}T12:00Z` }),
    ]);
    expect(await tach()).toMatchObject({ hours: 1001, offset: 1000.5 });
    await technician.record('meter-work', 4, [
      kind('meter.correct', { meter: 'tach', value: 100_080, asOf: `${daysAgo(2)}T12:00Z`, reason: 'Misread' }),
    ]);
    expect(await tach()).toMatchObject({ hours: 1000.8, offset: 1000.5 });
    // Defined anew it keeps its readings; the offset is part of the definition.
    const { definition } = defineMeter() as unknown as { definition: object };
    await technician.record('meter-work', 5, [
      {
        kind: 'meter.define',
        definition: { ...definition, name: 'Recording tachometer', offset: 100_050 },
        standsForTimeInService: true,
      } as { kind: string },
    ]);
    expect(await tach()).toMatchObject({ name: 'Recording tachometer', hours: 1000.8, offset: 1000.5 });
  });

  it('takes no replacement below the last reading, and no correction without a reason', async () => {
    const change = (of: string, fields: object) =>
      ({ kind: of, meter: 'tach', by: 'Hangar log', ...fields }) as { kind: string };
    const refused = async (work: { kind: string }) =>
      (await technician.record('meter-work', 6, [work])).errors?.[0]?.extensions;
    const at = `${daysAgo(1)}T12:00Z`;
    expect(await refused(change('meter.replace', { oldDial: 29, newDial: 0, at }))).toMatchObject({
      code: 'REFUSED',
      field: 'input.changes.0.oldDial',
    });
    expect(await refused(change('meter.correct', { value: 99_000, asOf: at, reason: '' }))).toMatchObject({
      code: 'REFUSED',
      field: 'input.changes.0.reason',
    });
  });
});
