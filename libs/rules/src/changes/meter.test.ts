import { describe, expect, it } from 'vitest';
import { catalogueOf } from '../../testing/changes.js';
import { busy } from '../../testing/every-change.js';
import type { Change } from './changes.js';
import { admit, apply } from './changes.js';

const now = '2026-03-16T16:00Z';
const replaced: Change = {
  kind: 'meter.replace',
  version: 1,
  meter: 'tach',
  oldDial: 407_100,
  newDial: 100,
  at: '2026-03-16T08:00Z',
  by: 'Desk',
};
/** Two meters; the first has had a new dial, so that 407,000 hundredths lie between dial and hours. */
const carried = apply(
  apply(busy, {
    kind: 'meter.define',
    version: 1,
    definition: { id: 'hobbs', name: 'Hour meter', kind: 'hour-meter', perFlightHour: 1000, offset: -50 },
    standsForTimeInService: false,
  }),
  replaced,
);
const read = (meter: string, dial: number, asOf = '2026-03-16T10:00Z'): Change => ({
  kind: 'meter.read',
  version: 1,
  meter,
  dial,
  asOf,
  by: 'Desk',
});
const refusals = (change: Change) => admit(carried, catalogueOf(), change, now);

describe('a meter with a new dial', () => {
  it('goes on from its hours', () => {
    expect(refusals(read('tach', 100))).toEqual([]);
    expect(apply(carried, read('tach', 250)).meters.readings['tach']).toEqual({
      value: 407_250,
      asOf: '2026-03-16T10:00Z',
      by: 'Desk',
    });
  });

  it('does not run backwards, and says in hours what was read', () => {
    expect(refusals(read('tach', 99))).toMatchObject([
      { code: 'hours-backwards', field: 'dial', data: { meter: 'tach', last: 407_100, value: 407_099 } },
    ]);
    expect(refusals({ ...replaced, oldDial: 99, newDial: 0, at: now })).toMatchObject([
      { code: 'hours-backwards', field: 'oldDial', data: { last: 407_100, value: 407_099 } },
    ]);
  });

  it('may get another one on the same hours', () => {
    const again: Change = { ...replaced, oldDial: 100, newDial: 0 };
    expect(refusals(again)).toEqual([]);
    const twice = apply(carried, again);
    expect(twice.meters.definitions.map(({ id, offset }) => [id, offset])).toEqual([
      ['hobbs', -50],
      ['tach', 407_100],
    ]);
    expect(twice.meters.readings['tach']?.value).toBe(407_100);
  });

  it('is not replaced before its last reading', () => {
    expect(refusals({ ...replaced, oldDial: 100, at: '2026-03-16T07:59Z' })).toMatchObject([
      { code: 'reading-older', field: 'at' },
    ]);
  });
});

it('a dial that would stand below nothing with its offset is refused, the first reading at nothing is not', () => {
  expect(refusals(read('hobbs', 49))).toMatchObject([
    { code: 'hours-backwards', field: 'dial', data: { meter: 'hobbs', last: 0, value: -1 } },
  ]);
  expect(refusals(read('hobbs', 50))).toEqual([]);
  expect(apply(carried, read('hobbs', 60)).meters.readings['hobbs']?.value).toBe(10);
  expect(apply(carried, read('hobbs', 60)).meters.readings['tach']?.value).toBe(407_100);
});
