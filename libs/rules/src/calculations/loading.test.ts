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

describe('the order of filling', () => {
  const flat = [
    { weightLb: 2000, forwardIn: 35, aftIn: 47 },
    { weightLb: 2400, forwardIn: 35, aftIn: 47 },
  ];
  const station = (armIn: number, leastLb: number, mostLb: number) => ({ name: `at ${armIn}`, armIn, leastLb, mostLb });
  const empty = { weightLb: 2000, armIn: 40 };
  // In no order of arms, as a manual may list them.
  const stations = [station(90, 0, 100), station(20, 0, 100), station(60, 0, 100)];

  it('is from the front for the forward check and from the rear for the aft check', () => {
    const { forward, aft } = adverseLoadings(empty, stations, flat);
    expect(forward).toMatchObject({ weightLb: 2100, armIn: 39.048 });
    expect(aft).toMatchObject({ weightLb: 2200, armIn: 43.182 });
  });

  it('counts what is always aboard once', () => {
    expect(adverseLoadings(empty, [station(20, 60, 100)], flat).forward).toMatchObject({ weightLb: 2100 });
    expect(adverseLoadings(empty, [station(20, 100, 100)], flat).forward).toMatchObject({ weightLb: 2100 });
  });

  it('takes the worst by its margin where the limit moves with the weight', () => {
    const moving = [
      { weightLb: 2000, forwardIn: 30, aftIn: 50 },
      { weightLb: 2200, forwardIn: 40, aftIn: 42 },
    ];
    const { forward, aft } = adverseLoadings(empty, [station(42, 0, 200)], moving);
    expect(forward).toMatchObject({ weightLb: 2200, armIn: 40.182, limits: { forwardIn: 40 } });
    expect(aft).toMatchObject({ weightLb: 2200, armIn: 40.182, limits: { aftIn: 42 } });
  });

  it('finds a loading beyond the greatest weight worse than any other', () => {
    const heavy = adverseLoadings({ weightLb: 2300, armIn: 40 }, [station(40, 150, 150)], flat);
    expect([heavy.forward.limits, heavy.aft.limits]).toEqual([null, null]);
  });
});

describe('a station that is partly filled', () => {
  const station = (armIn: number, mostLb: number) => ({ name: `at ${armIn}`, armIn, leastLb: 0, mostLb });

  it('is beyond a limit that rises on the way, though empty and full are within', () => {
    // 2000 lb at 37.5 in: (75000 + 48 x) / (2000 + x) is 38.455 in with 200 lb and 39.25 in with 400 lb.
    const limits = [
      { weightLb: 2000, forwardIn: 36, aftIn: 46 },
      { weightLb: 2200, forwardIn: 39, aftIn: 46 },
      { weightLb: 2400, forwardIn: 39, aftIn: 46 },
    ];
    const { forward } = adverseLoadings({ weightLb: 2000, armIn: 37.5 }, [station(48, 400)], limits);
    expect(forward).toMatchObject({ weightLb: 2200, armIn: 38.455, limits: { forwardIn: 39 } });
  });

  // The centre is 20 + 40000 / w; the limit falls by 0.008375 in each pound: least margin at the root of 40000 / 0.008375, 2185.43 lb.
  it('is worst between two bends of the forward limit, where its margin turns', () => {
    const limits = [
      { weightLb: 2000, forwardIn: 39.95, aftIn: 46 },
      { weightLb: 2400, forwardIn: 36.6, aftIn: 46 },
    ];
    const { forward } = adverseLoadings({ weightLb: 2000, armIn: 40 }, [station(20, 400)], limits);
    expect(forward).toMatchObject({ weightLb: 2185.43, armIn: 38.303, limits: { forwardIn: 38.397 } });
  });

  // The same from behind: 60 - 40000 / w against a limit that rises by 0.008375 in each pound.
  it('is worst between two bends of the aft limit, where its margin turns', () => {
    const limits = [
      { weightLb: 2000, forwardIn: 30, aftIn: 40.05 },
      { weightLb: 2400, forwardIn: 30, aftIn: 43.4 },
    ];
    const { aft } = adverseLoadings({ weightLb: 2000, armIn: 40 }, [station(60, 400)], limits);
    expect(aft).toMatchObject({ weightLb: 2185.43, armIn: 41.697, limits: { aftIn: 41.603 } });
  });

  it('turns nowhere that the weight does not reach', () => {
    const limits = [
      { weightLb: 2000, forwardIn: 39.95, aftIn: 46 },
      { weightLb: 2400, forwardIn: 36.6, aftIn: 46 },
    ];
    const { forward } = adverseLoadings({ weightLb: 2000, armIn: 40 }, [station(20, 100)], limits);
    expect(forward).toMatchObject({ weightLb: 2100, armIn: 39.048, limits: { forwardIn: 39.113 } });
  });

  it('meets the tighter side of a step on its way', () => {
    const { forward } = adverseLoadings({ weightLb: 2000, armIn: 37 }, [station(60, 400)], stepped);
    expect(forward).toMatchObject({ weightLb: 2000, armIn: 37, limits: { forwardIn: 36 } });
    const light = adverseLoadings({ weightLb: 2000, armIn: 37 }, [station(46, 400)], stepped);
    expect(light.forward).toMatchObject({ weightLb: 2200, armIn: 37.818, limits: { forwardIn: 38 } });
  });
});
