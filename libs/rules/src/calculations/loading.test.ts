import { describe, expect, it } from 'vitest';
import { adverseLoadings, ballastLb, limitsAt, percentOfChord } from './loading.js';

const stepped = [
  { weightLb: 2000, forwardIn: 36, aftIn: 46 },
  { weightLb: 2200, forwardIn: 36, aftIn: 46 },
  { weightLb: 2200, forwardIn: 38, aftIn: 45 },
  { weightLb: 2400, forwardIn: 38, aftIn: 45 },
];

describe('limits at a weight', () => {
  it('takes the tighter side of a step, and the right one beside it', () => {
    expect(limitsAt(2199.99, stepped)).toEqual({ forwardIn: 36, aftIn: 46 });
    expect(limitsAt(2200, stepped)).toEqual({ forwardIn: 38, aftIn: 45 });
    expect(limitsAt(2200.01, stepped)).toEqual({ forwardIn: 38, aftIn: 45 });
  });

  it('does not mind the order of the weights', () => {
    const [first, ...others] = stepped;
    const shuffled = [...others, ...(first ? [first] : [])];
    for (const weight of [2100, 2200, 2300]) expect(limitsAt(weight, shuffled)).toEqual(limitsAt(weight, stepped));
  });
});

describe('adverse loadings', () => {
  const station = (armIn: number, leastLb: number, mostLb: number) => ({ name: `at ${armIn}`, armIn, leastLb, mostLb });

  it('fills the last station only as far as the weight allows', () => {
    const { aft } = adverseLoadings({ weightLb: 2000, armIn: 40 }, [station(80, 0, 900)], stepped);
    expect(aft).toMatchObject({ weightLb: 2400, armIn: 46.667 });
  });

  it('stops at what is always aboard where that is the worst', () => {
    const { forward } = adverseLoadings({ weightLb: 2000, armIn: 40 }, [station(80, 0, 100)], stepped);
    expect(forward).toMatchObject({ weightLb: 2000, armIn: 40, limits: { forwardIn: 36 } });
  });

  it('has no limits beyond the greatest weight', () => {
    const { forward } = adverseLoadings({ weightLb: 2400.01, armIn: 40 }, [station(80, 0, 100)], stepped);
    expect(forward.limits).toBeNull();
  });
});

it.each([
  ['no chord', () => percentOfChord({ armIn: 40, leadingEdgeIn: 26, chordIn: 0 }), 'chordIn'],
  ['an arm that is no number', () => percentOfChord({ armIn: NaN, leadingEdgeIn: 26, chordIn: 58 }), 'armIn'],
  [
    'ballast at the wanted centre',
    () => ballastLb({ aircraftLb: 1900, centreIn: 38, wantedIn: 39, ballastArmIn: 39 }),
    'ballastArmIn',
  ],
  [
    'ballast on the wrong side',
    () => ballastLb({ aircraftLb: 1900, centreIn: 38, wantedIn: 39, ballastArmIn: 0 }),
    'ballastArmIn',
  ],
])('refuses %s', (_name, call, field) => {
  expect(call).toThrow(expect.objectContaining({ name: 'CalculationError', field }) as Error);
});
