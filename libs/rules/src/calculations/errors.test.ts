import { describe, expect, it } from 'vitest';
import { arinc429LabelBits, arinc429WordOf } from './arinc-429.js';
import { CalculationError, numberWithin, positive } from './errors.js';
import { ballastLb, percentOfChord } from './loading.js';
import { emptyWeightAfter, loadedCentre, negligibleWeightLb } from './mass.js';
import { limitManoeuvreFactor, mountLoadsLb } from './mount.js';
import { nextDue } from './recurrence.js';
import { sparesFor } from './spare-fuses.js';
import { vhfHarmonic } from './vhf.js';
import { viewAngle } from './view.js';
import {
  aluminiumVoltageDrop,
  bundleCurrent,
  conductorTemperature,
  harnessCurrent,
  longestRun,
  smallestWire,
  wireVoltageDrop,
} from './wire.js';

const item = { weightLb: 100, armIn: 40 };
const ballast = { aircraftLb: 1900, centreIn: 38, wantedIn: 39, ballastArmIn: 80 };
const chord = { armIn: 40, leadingEdgeIn: 26, chordIn: 58 };
const conductor = { ambientC: 20, ratingC: 150, currentA: 5, mostA: 10 };
const wire = {
  lengthFt: 10,
  currentA: 5,
  dropV: 0.5,
  wireRatingC: 150,
  protector: { kind: 'fuse', ratingA: 5 },
} as const;
const row = { combine: 'first', countFrom: 'done', toleranceFor: 'any' } as const;
const done = { doneDate: '2026-01-01', doneMeters: {} };
const days = (count: number, tolerance = 0) =>
  nextDue(
    {
      ...row,
      parts: [
        { kind: 'days', count: 5 },
        { kind: 'days', count, tolerance },
      ],
    },
    done,
  );

/** A person who typed a wrong number is told which one. */
describe('impossible input is named by its field', () => {
  it.each<[string, () => unknown]>([
    ['aircraftLb', () => ballastLb({ ...ballast, aircraftLb: 0 })],
    ['wantedIn', () => ballastLb({ ...ballast, wantedIn: NaN })],
    ['centreIn', () => ballastLb({ ...ballast, centreIn: -10_001 })],
    ['ballastArmIn', () => ballastLb({ ...ballast, ballastArmIn: 10_001 })],
    ['leadingEdgeIn', () => percentOfChord({ ...chord, leadingEdgeIn: Infinity })],
    ['chordIn', () => percentOfChord({ ...chord, chordIn: -1 })],
    ['items[1].weightLb', () => emptyWeightAfter(item, [item, { ...item, weightLb: NaN }])],
    ['items', () => loadedCentre([])],
    ['emptyWeightLb', () => negligibleWeightLb(0.9)],
    ['massLb', () => mountLoadsLb(0, { forward: 1, up: 1, side: 1, down: 1 })],
    ['maxWeightLb', () => limitManoeuvreFactor('normal', 0)],
    ['parts', () => nextDue({ ...row, parts: [] }, done)],
    ['parts[1].count', () => days(0)],
    ['parts[1].count', () => days(1.5)],
    ['parts[1].tolerance', () => days(1, -1)],
    ['frequencyMHz', () => vhfHarmonic(0)],
    ['offsetIn', () => viewAngle({ offsetIn: 241, distanceIn: 28 })],
    ['distanceIn', () => viewAngle({ offsetIn: 1, distanceIn: 0 })],
    ['lengthFt', () => wireVoltageDrop({ awg: 20, lengthFt: -1, currentA: 1 })],
    ['currentA', () => wireVoltageDrop({ awg: 20, lengthFt: 1, currentA: 1001 })],
    ['conductorC', () => wireVoltageDrop({ awg: 20, lengthFt: 1, currentA: 1, conductorC: -71 })],
    ['awg', () => wireVoltageDrop({ awg: 21 as never, lengthFt: 1, currentA: 1 })],
    ['currentA', () => longestRun({ awg: 20, currentA: 0, dropV: 0.5 })],
    ['dropV', () => longestRun({ awg: 20, currentA: 1, dropV: 0 })],
    ['freeAirA', () => bundleCurrent({ freeAirA: 0, bundleFactor: 1, altitudeFactor: 1 })],
    ['bundleFactor', () => bundleCurrent({ freeAirA: 1, bundleFactor: 1.1, altitudeFactor: 1 })],
    ['altitudeFactor', () => bundleCurrent({ freeAirA: 1, bundleFactor: 1, altitudeFactor: 0 })],
    ['wiresA[1]', () => harnessCurrent([5, 0], 1)],
    ['share', () => harnessCurrent([5], 1.01)],
    ['ambientC', () => conductorTemperature({ ...conductor, ambientC: -71 })],
    ['ratingC', () => conductorTemperature({ ...conductor, ratingC: 19 })],
    ['currentA', () => conductorTemperature({ ...conductor, currentA: -1 })],
    ['mostA', () => conductorTemperature({ ...conductor, mostA: 0 })],
    ['protector.ratingA', () => smallestWire({ ...wire, protector: { kind: 'fuse', ratingA: 0 } })],
    ['protector.ratingA', () => smallestWire({ ...wire, protector: { kind: 'fuse', ratingA: 4 } })],
    ['wireRatingC', () => smallestWire({ ...wire, wireRatingC: 260 as never })],
    ['awg', () => aluminiumVoltageDrop({ awg: 10, lengthFt: 1, currentA: 1 })],
    ['label', () => arinc429LabelBits('400')],
    ['data', () => arinc429WordOf({ label: '012', sdi: 0, data: 0.5, ssm: 0 })],
    ['inUse', () => sparesFor(0)],
    ['inUse', () => sparesFor(1.5)],
  ])('%s', (field, call) => {
    expect(call).toThrow(expect.objectContaining({ name: 'CalculationError', field }) as Error);
  });

  it('with the gauges that there are', () => {
    expect(() => wireVoltageDrop({ awg: 21 as never, lengthFt: 1, currentA: 1 })).toThrow(/24, 22, 20, .*-2, -3 \(/);
  });
});

describe('bounds', () => {
  it.each([
    [1, 3, 1],
    [1, 3, 3],
  ])('from %d to %d let %d through', (least, most, value) => {
    expect(numberWithin('x', value, least, most)).toBe(value);
  });

  it.each([0.999, 3.001, NaN, Infinity, -Infinity, '2' as never, null as never])('from 1 to 3 refuse %s', (value) => {
    expect(() => numberWithin('x', value, 1, 3)).toThrow(CalculationError);
  });

  it('above nothing and at most so much', () => {
    expect([positive('x', 0.001, 3), positive('x', 3, 3)]).toEqual([0.001, 3]);
    for (const value of [0, -1, 3.001, NaN, '2' as never])
      expect(() => positive('x', value, 3)).toThrow(/^x is .* above 0 and at most 3\.$/);
  });
});
