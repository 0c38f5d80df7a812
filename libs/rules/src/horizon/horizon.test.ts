import { describe, expect, it } from 'vitest';
import { means, says, smallSystem } from '../../testing/small-system.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import type { Spoken } from '../assess/system.js';
import { anyOf, met, within } from '../verdict/build.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { defaultConditions } from '../verdict/conditions.js';
import { horizon, horizonOf } from './horizon.js';

const lesson: Partial<FlightConditions> = {
  rules: 'vfr',
  light: 'day',
  purpose: 'training-provided',
  airspace: [],
  topFt: 3000,
  overWaterBeyondGlide: false,
};
const held = trainer({
  status: {
    holds: [{ id: 'h', reason: 'Panel open', by: 'J. Orrell', from: '2026-03-18T00:00Z', until: '2026-03-20T00:00Z' }],
  },
});
const end = '2026-05-20T00:00Z';
const hold = 'held|h';
const hundred = 'hundred-hour-inspection|aircraft';

// The trainer's meter was read on 15 March at 20:00Z, good for 31 days, with 70 hours left to its 100-hour inspection.
describe('a trainer that is held for two days, asked for lessons', () => {
  const asked = () => horizon(held, trainerCatalogue, goodDay, end, lesson);

  it('is asked from and to when, for the flight in full', () => {
    const { windows: _windows, ...rest } = asked();
    expect(rest).toEqual({
      from: goodDay,
      to: end,
      conditions: { ...lesson, localTrainingNm: null, crewOnly: false, errand: null, region: null, approaches: [] },
    });
  });

  it('leaves no gap: each stretch of time has its bands of hours, each ends because of what it ends of', () => {
    expect(
      asked().windows.map((each) => [
        each.from,
        each.to,
        each.above,
        each.upTo,
        each.ready,
        each.standing,
        each.because,
        each.endsBecause,
      ]),
    ).toEqual([
      [goodDay, '2026-03-18T00:00Z', -1, 7000, 'yes', 'judged', [hold], [hold]],
      [goodDay, '2026-03-18T00:00Z', 7000, null, 'no', 'judged', [hundred], [hold]],
      ['2026-03-18T00:00Z', '2026-03-20T00:00Z', -1, 7000, 'no', 'held', [hold], [hold]],
      ['2026-03-18T00:00Z', '2026-03-20T00:00Z', 7000, null, 'no', 'held', [hold, hundred], [hold]],
      ['2026-03-20T00:00Z', '2026-04-15T20:00Z', -1, 7000, 'yes', 'judged', [hundred], [hundred]],
      ['2026-03-20T00:00Z', '2026-04-15T20:00Z', 7000, null, 'no', 'judged', [hundred], []],
      ['2026-04-15T20:00Z', end, -1, 7000, 'cannot-tell', 'judged', [hundred], []],
      ['2026-04-15T20:00Z', end, 7000, null, 'no', 'judged', [hundred], []],
    ]);
  });

  it('where meters are read in time only the hours end it', () => {
    const ahead = horizon(held, trainerCatalogue, '2026-03-20T00:00Z', end, lesson, true).windows;
    expect(ahead.map((each) => [each.to, each.above, each.upTo, each.ready, each.because])).toEqual([
      [end, -1, 7000, 'yes', [hundred]],
      [end, 7000, null, 'no', [hundred]],
    ]);
  });
});

it('a moment that is an edge begins a window and ends none before it', () => {
  const { windows } = horizon(held, trainerCatalogue, '2026-03-18T00:00Z', '2026-03-20T00:00Z', lesson);
  expect(windows.map((each) => [each.from, each.to, each.ready])).toEqual([
    ['2026-03-18T00:00Z', '2026-03-20T00:00Z', 'no'],
    ['2026-03-18T00:00Z', '2026-03-20T00:00Z', 'no'],
  ]);
});

it('says how high the flight may go and how sure the sources are', () => {
  const ifr = { ...lesson, rules: 'ifr', purpose: 'private', airspace: ['controlled'] } as const;
  const [first] = horizon(trainer(), trainerCatalogue, goodDay, '2026-03-17T00:00Z', ifr).windows;
  expect(first).toMatchObject({ operation: 'flight', ready: 'yes', topFt: 20_000 });
  expect(first?.weakestSource).not.toBeNull();
});

it('ends no window at an edge that is the end of what was asked', () => {
  const { windows } = horizon(held, trainerCatalogue, goodDay, '2026-03-18T00:00Z', lesson);
  expect(windows.map((each) => [each.from, each.to, each.upTo, each.because, each.endsBecause])).toEqual([
    [goodDay, '2026-03-18T00:00Z', 7000, [hundred], []],
    [goodDay, '2026-03-18T00:00Z', null, [hundred], []],
  ]);
});

it('without hours that anything depends on there is one band', () => {
  const home = { ...lesson, purpose: 'private' } as const;
  const { windows } = horizon(held, trainerCatalogue, goodDay, '2026-03-21T00:00Z', home);
  expect(windows.map((each) => [each.to, each.above, each.upTo, each.ready])).toEqual([
    ['2026-03-18T00:00Z', -1, null, 'yes'],
    ['2026-03-20T00:00Z', -1, null, 'no'],
    ['2026-03-21T00:00Z', -1, null, 'yes'],
  ]);
});

it('a horizon without more words looks at readings as they are, not as if they were renewed', () => {
  const tach = { id: 'tach', name: 'T', kind: 'tachometer' as const, perFlightHour: 1000, offset: 0 };
  const system = smallSystem({
    spoken: [says('hundred', within('hundred', { atMost: { tach: 1000 } }), 'fly')],
    dossier: {
      meters: { definitions: [tach], readings: { tach: { value: 400, asOf: '2026-03-10T00:00Z', by: 'Desk' } } },
    },
  });
  const flight = { ...defaultConditions, rules: 'vfr' as const, purpose: 'private' as const, airspace: [] };
  const edges = (assumeRead?: boolean) =>
    horizonOf(system, '2026-03-16T00:00Z', '2026-05-01T00:00Z', flight, assumeRead).windows.map(
      ({ from, above, upTo, ready }) => [from, above, upTo, ready],
    );
  expect(edges()).toEqual([
    ['2026-03-16T00:00Z', -1, 600, 'yes'],
    ['2026-03-16T00:00Z', 600, null, 'no'],
    ['2026-04-10T00:00Z', -1, 600, 'cannot-tell'],
    ['2026-04-10T00:00Z', 600, null, 'no'],
  ]);
  expect(edges(true)).toEqual(edges().slice(0, 2));
});

it('past the last of several edges of hours everything has ended that they end', () => {
  const tach = { id: 'tach', name: 'T', kind: 'tachometer' as const, perFlightHour: 1000, offset: 0 };
  const system = smallSystem({
    spoken: [500, 1000, 1500].map((at) => says(`to-${at}`, within(`to-${at}`, { atMost: { tach: at } }), 'fly')),
    dossier: {
      meters: { definitions: [tach], readings: { tach: { value: 400, asOf: '2026-03-10T00:00Z', by: 'Desk' } } },
    },
  });
  const flight = { ...defaultConditions, rules: 'vfr' as const, purpose: 'private' as const, airspace: [] };
  const { windows } = horizonOf(system, '2026-03-16T00:00Z', '2026-03-17T00:00Z', flight, true);
  expect(windows.map(({ above, upTo, ready, because }) => [above, upTo, ready, because])).toEqual([
    [-1, 100, 'yes', ['to-500']],
    [100, 600, 'no', ['to-500']],
    [600, 1100, 'no', ['to-500', 'to-1000']],
    [1100, null, 'no', ['to-500', 'to-1000', 'to-1500']],
  ]);
});

describe('what ends a yes', () => {
  const day = (date: number) => `2026-03-${date}T00:00Z`;
  const vfr = { ...defaultConditions, rules: 'vfr', purpose: 'private', airspace: [] } as const;
  const ifr = { ...vfr, rules: 'ifr' } as const;
  const tach = {
    meters: {
      definitions: [{ id: 'tach', name: 'T', kind: 'tachometer' as const, perFlightHour: 1000, offset: 0 }],
      readings: { tach: { value: 0, asOf: day(10), by: 'Desk' } },
    },
  };
  const flies = says('flies', met('flies'), 'fly');
  const atMost = (hours: number) => ({ atMost: { tach: hours } });
  const told = (parts: Parameters<typeof smallSystem>[0], flight: FlightConditions = vfr) =>
    horizonOf(smallSystem({ dossier: tach, ...parts }), day(16), day(22), flight, true).windows.map(
      ({ from, upTo, ready, because, endsBecause }) => [from, upTo, ready, because, endsBecause],
    );
  const either = (vor: Spoken, gnss: Spoken) => ({
    means: [means('r1', 'two-way-radio'), means('v1', 'nav-vor'), means('g1', 'nav-gnss')],
    spoken: [
      flies,
      says('ifr', met('ifr'), 'ifr-aircraft'),
      says('radio', met('radio'), 'two-way-radio', { through: 'r1' }),
      vor,
      gnss,
    ],
  });

  it('is nothing where it goes on', () => {
    expect(told({ spoken: [flies] })).toEqual([[day(16), null, 'yes', [], []]]);
  });

  it('is what the last of two means loses by a day', () => {
    const vor = says('vor', within('vor', { before: day(18) }), 'nav-vor', { through: 'v1' });
    const gnss = says('gnss', within('gnss', { before: day(20) }), 'nav-gnss', { through: 'g1' });
    expect(told(either(vor, gnss), ifr)).toEqual([
      [day(16), null, 'yes', ['gnss'], ['vor']],
      [day(18), null, 'yes', ['gnss'], ['gnss']],
      [day(20), null, 'no', ['vor'], []],
    ]);
  });

  it('is what comes with more hours, not what was lost with fewer', () => {
    const vor = says('vor', within('vor', atMost(100)), 'nav-vor', { through: 'v1' });
    const gnss = says('gnss', within('gnss', atMost(200), {}, 'not-met', 'met'), 'nav-gnss', { through: 'g1' });
    const parts = either(vor, gnss);
    const top = says('top', within('top', atMost(300)), 'fly');
    expect(told({ ...parts, spoken: [...parts.spoken, top] }, ifr)).toEqual([
      [day(16), 100, 'yes', ['vor'], []],
      [day(16), 200, 'no', ['vor'], []],
      [day(16), 300, 'yes', ['top'], []],
      [day(16), null, 'no', ['top'], []],
    ]);
  });

  it('by hours is what they end then, and not what they would have ended on an earlier day', () => {
    const until18 = (key: string, hours: number) =>
      says(key, anyOf(key, [within('later', { from: day(18) }), within('hours', atMost(hours))], 'met'), 'fly');
    const spoken = [flies, until18('p', 100), says('q', within('q', atMost(200)), 'fly'), until18('w', 200)];
    expect(told({ spoken })).toEqual([
      [day(16), 100, 'yes', ['p'], []],
      [day(16), 200, 'no', ['p'], ['p']],
      [day(16), null, 'no', ['p', 'q', 'w'], ['p', 'w']],
      [day(18), 200, 'yes', ['q'], []],
      [day(18), null, 'no', ['q'], []],
    ]);
  });
});
