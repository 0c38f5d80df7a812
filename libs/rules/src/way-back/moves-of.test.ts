import { describe, expect, it } from 'vitest';
import { ifr, vfr } from '../../testing/flights.js';
import { means, says, smallSystem } from '../../testing/small-system.js';
import { goodDay, trainerCatalogue } from '../../testing/trainer.js';
import { snapshotOf } from '../assess/snapshot.js';
import { allOf, anyOf, implies, met, notMet, ref, unknown, within } from '../verdict/build.js';
import type { FlightConditions } from '../verdict/conditions.js';
import { widenConditions } from '../verdict/conditions.js';
import type { Remedy } from '../verdict/result.js';
import { action } from './action.js';
import { defaultLabour } from './labour.js';
import type { State } from './moves.js';
import { movesOf } from './moves.js';

const night: Partial<FlightConditions> = { ...vfr, light: 'night' };
const hire: Partial<FlightConditions> = { ...night, purpose: 'training-provided' };
const radio: Partial<FlightConditions> = { ...vfr, airspace: ['class-b-c'] };
const doing = (change: string, subject: string): Remedy => ({ kind: 'do', change, subject, facts: [] });
const lift = { remedies: [doing('record.add', 'vor-check:v1')] };
const swing = { remedies: [doing('record.add', 'compass-swing')] };
const able = says('able', met('a'), 'fly');

/** Moves, with their prices, on a flight over a few statements in place of all rules. */
function offered(
  parts: Parameters<typeof smallSystem>[0],
  conditions: Partial<FlightConditions> = vfr,
  done: Partial<Pick<State, 'supposed' | 'deeds'>> = {},
) {
  const system = smallSystem(parts);
  const flight = widenConditions(conditions);
  const snapshot = snapshotOf(system, goodDay, 0, flight);
  const state = { dossier: system.dossier, supposed: new Set<string>(), deeds: [], steps: 0, ...done };
  const moment = { instant: goodDay, to: goodDay, hoursAhead: 0 };
  return movesOf(system, snapshot, {
    state,
    catalogue: trainerCatalogue,
    moment,
    flight,
    labour: defaultLabour,
  }).map(({ id, cost }) => `${id} ${cost}`);
}

describe('moves on the first need that fails', () => {
  it('are none where all needs are met', () => {
    expect(offered({ spoken: [says('a', met('a'), 'fly', swing)] })).toEqual([]);
  });

  it('are none where no statement judges the aircraft: to fit something tells nobody whether it may fly', () => {
    expect(offered({ spoken: [says('a', met('a'), 'fly', { only: true })] })).toEqual([]);
  });

  it('are what the statement names, and nothing where it names nothing', () => {
    expect(offered({ spoken: [says('a', notMet('a'), 'fly', swing)] })).toEqual(['compass-swing 1.5']);
    expect(offered({ spoken: [says('a', notMet('a'), 'fly')] })).toEqual([]);
  });

  it('are to find out what nobody recorded and is not yet taken to turn out well', () => {
    const parts = { spoken: [says('a', unknown('a', ['x', 'y']), 'fly')] };
    expect(offered(parts)).toEqual(['find-out x y 0.5']);
    expect(offered(parts, vfr, { supposed: new Set(['x']) })).toEqual(['find-out y 0.5']);
    expect(offered(parts, vfr, { supposed: new Set(['x', 'y']) })).toEqual([]);
  });

  it('are not to find out what cannot help while something is known not to be so', () => {
    const clause = allOf('g', [notMet('a'), unknown('b', ['x'])], 'met');
    expect(offered({ spoken: [says('a', clause, 'fly', swing)] })).toEqual(['compass-swing 1.5']);
  });

  it('are not to read a meter that nobody has read at all', () => {
    expect(offered({ spoken: [says('a', within('a', { atMost: { tach: 100 } }), 'fly')] })).toEqual([]);
  });
});

describe('a statement that hangs on another capability', () => {
  const dark = says('dark', unknown('a', []), 'night', lift);
  const paid = says('paid', notMet('a'), 'hire', swing);
  const both = ['vor-check v1 0.2', 'compass-swing 1.5'];

  it.each([
    ['by itself', ref('night'), ['vor-check v1 0.2']],
    ['in a group', allOf('g', [met('a'), ref('night'), ref('hire')], 'met'), both],
    ['by either', anyOf('g', [ref('night'), ref('hire')], 'met'), both],
    ['as an if and a then', implies(ref('night'), ref('hire')), both],
    ['not at all', notMet('a'), []],
  ])('has the moves of that: %s', (_, clause, expected) => {
    expect(offered({ spoken: [says('a', clause, 'fly'), dark, paid] }, hire)).toEqual(expected);
  });

  it('has none by itself, and does not go round', () => {
    expect(offered({ spoken: [says('a', ref('fly'), 'fly')] })).toEqual([]);
    const round = [able, says('a', ref('hire'), 'night'), says('b', allOf('g', [ref('night')], 'met'), 'hire', swing)];
    expect(offered({ spoken: round }, night)).toEqual(['compass-swing 1.5']);
  });

  it('may hang on one twice, each time by its own ways', () => {
    const twice = [
      says('a', allOf('g', [ref('hire'), ref('night')], 'met'), 'fly'),
      dark,
      says('b', ref('night'), 'hire'),
    ];
    expect(offered({ spoken: twice })).toEqual(['vor-check v1 0.2']);
  });
});

describe('a capability by several means', () => {
  const fit = 'fit-com vc1 12';

  it('has the ways of each means, and a unit that can be fitted', () => {
    const spoken = [
      able,
      says('a', notMet('a'), 'two-way-radio', { through: 'r1', ...lift }),
      says('b', notMet('a'), 'two-way-radio', { through: 'r2', ...swing }),
    ];
    const ways = [means('r1', 'two-way-radio'), means('r2', 'two-way-radio')];
    expect(offered({ spoken, means: ways }, radio)).toEqual(['vor-check v1 0.2', 'compass-swing 1.5', fit]);
  });

  it('has none on a means that nothing judges, though nothing about it fails', () => {
    const spoken = [able, says('a', met('a'), 'two-way-radio', { through: 'r1', only: true, ...lift })];
    expect(offered({ spoken, means: [means('r1', 'two-way-radio')] }, radio)).toEqual([fit]);
  });

  it('of several that fail about one means it takes the one with the fewest ways', () => {
    const two = { remedies: [...lift.remedies, ...swing.remedies] };
    const spoken = [
      able,
      says('a', notMet('a'), 'two-way-radio', { through: 'r1', ...two }),
      says('b', notMet('a'), 'two-way-radio', { through: 'r1', ...swing }),
    ];
    expect(offered({ spoken, means: [means('r1', 'two-way-radio')] }, radio)).toEqual(['compass-swing 1.5', fit]);
  });
});

describe('a unit that the aircraft wants', () => {
  const wants = (change: string, subject: string, part: object = {}) =>
    offered(
      { spoken: [able, says('a', notMet('a'), 'night', { remedies: [doing(change, subject)], ...part })] },
      night,
    );
  const effects = [
    { stops: 'plan' },
    { stops: 'capability', capability: 'night' },
    { stops: 'capability', capability: 'two-way-radio' },
    { stops: 'capability', capability: 'approach-lpv' },
  ] as const;

  it('is one for each capability that is lost without it', () => {
    expect(wants('unit.install', 'aircraft', { effects })).toEqual(['fit-com vc1 12', 'fit-navigator nx5 45']);
  });

  it('is none where the statement asks for a unit in the place of another, or for something else about the aircraft', () => {
    expect(wants('unit.install', 'r1', { effects })).toEqual([]);
    expect(wants('electrical.set', 'aircraft', { effects })).toEqual([]);
  });
});

describe('what was done', () => {
  const both = { remedies: [...swing.remedies, doing('unit.deactivate', 'r1')] };
  const parts = { spoken: [able, says('a', notMet('a'), 'ifr-aircraft', both)] };
  const deactivated = action('deactivate-unit', ['r1'], 'unit.deactivate', []);
  const swung = action('compass-swing', [], 'record.add', []);

  it('is not done again, but an entry may be put later, at no further cost', () => {
    expect(offered(parts, ifr)).toEqual(['compass-swing 1.5', 'deactivate-unit r1 0.6']);
    expect(offered(parts, ifr, { deeds: [deactivated] })).toEqual(['compass-swing 1.5']);
    expect(offered(parts, ifr, { deeds: [swung] })).toEqual(['compass-swing 0', 'deactivate-unit r1 0.6']);
    expect(offered(parts, ifr, { deeds: [swung, deactivated] })).toEqual(['compass-swing 0']);
  });
});
