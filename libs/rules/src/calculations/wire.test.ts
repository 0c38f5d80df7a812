import { describe, expect, test } from 'vitest';
import { CalculationError } from './errors.js';
import { bundleCurrent, longestRun, protectorFor, smallestWire, smallestWireForDrop, wireVoltageDrop } from './wire.js';

describe('wires', () => {
  test('the longest run keeps the drop, a hundredth of a foot more does not', () => {
    for (const awg of [24, 20, 16, 12, 8, 0, -3]) {
      for (const currentA of [0.3, 5, 17, 40]) {
        const feet = longestRun({ awg, currentA, dropV: 1 });
        expect(wireVoltageDrop({ awg, lengthFt: feet, currentA })).toBeLessThanOrEqual(1);
        expect(wireVoltageDrop({ awg, lengthFt: feet * 1.001 + 0.011, currentA })).toBeGreaterThan(1);
      }
    }
  });

  test('no gauge keeps 0.01 V over 1,000 ft at 100 A', () => {
    expect(smallestWireForDrop({ dropV: 0.01, lengthFt: 1000, currentA: 100 })).toBeNull();
  });

  test('a drop exactly at the limit is kept', () => {
    expect(smallestWireForDrop({ dropV: 28.4, lengthFt: 1000, currentA: 1 })).toBe(24);
    expect(smallestWireForDrop({ dropV: 28.3999, lengthFt: 1000, currentA: 1 })).toBe(22);
  });

  test('heat asks for a thicker wire', () => {
    const input = { dropV: 1, lengthFt: 16, currentA: 20 };
    expect(smallestWireForDrop(input)).toBe(14);
    expect(smallestWireForDrop({ ...input, conductorC: 100 })).toBe(12);
  });

  test('smallest wire: each of the three may decide', () => {
    const wire = (
      dropV: number,
      lengthFt: number,
      currentA: number,
      ratingA: number,
      kind: 'breaker' | 'fuse' = 'breaker',
    ) => smallestWire({ dropV, lengthFt, currentA, wireRatingC: 200, protector: { kind, ratingA } });
    expect(wire(1, 50, 20, 20)).toEqual({ awg: 8, byDrop: 8, byCurrent: 12, byProtector: 14 });
    expect(wire(1, 1, 20, 20)).toEqual({ awg: 12, byDrop: 24, byCurrent: 12, byProtector: 14 });
    expect(wire(1, 1, 2, 15)).toEqual({ awg: 16, byDrop: 24, byCurrent: 24, byProtector: 16 });
    expect(wire(1, 1, 2, 15, 'fuse').byProtector).toBe(14);
    expect(wire(1, 1, 2, 130)).toEqual({ awg: null, byDrop: 24, byCurrent: 24, byProtector: null });
  });

  test('no length or no current loses nothing', () => {
    expect(wireVoltageDrop({ awg: 20, lengthFt: 0, currentA: 5 })).toBe(0);
    expect(wireVoltageDrop({ awg: 20, lengthFt: 10, currentA: 0 })).toBe(0);
  });

  test('impossible input names the field and the way out', () => {
    const run = { lengthFt: 10, currentA: 5 };
    expect(() => wireVoltageDrop({ awg: 21, ...run })).toThrow(/gauge.*Use one of/);
    expect(() => wireVoltageDrop({ awg: 20, lengthFt: -1, currentA: 5 })).toThrow(/lengthFt.*from 0/);
    expect(() => wireVoltageDrop({ awg: 20, lengthFt: 10, currentA: NaN })).toThrow(/currentA/);
    expect(() => wireVoltageDrop({ awg: 20, ...run, conductorC: 500 })).toThrow(/conductorC/);
    expect(() => smallestWireForDrop({ ...run, dropV: 0 })).toThrow(/dropV/);
    expect(() => longestRun({ awg: 20, currentA: 0, dropV: 1 })).toThrow(CalculationError);
    expect(() => bundleCurrent({ freeAirA: 10, bundleFactor: 1.1, altitudeFactor: 1 })).toThrow(/bundleFactor/);
    expect(() => protectorFor(3)).toThrow(CalculationError);
    const protector = { kind: 'breaker', ratingA: 4 } as const;
    expect(() => smallestWire({ ...run, dropV: 1, wireRatingC: 105, protector })).toThrow(/4 A opens at a load of 5 A/);
    expect(() => smallestWire({ ...run, currentA: 1, dropV: 1, wireRatingC: 90 as 105, protector })).toThrow(
      /105, 150 or 200/,
    );
  });
});

test('a wire may carry all of what the table gives it, and no gauge carries more than the thickest', () => {
  const by = (currentA: number, ratingA = 600) =>
    smallestWire({ lengthFt: 1, currentA, dropV: 5, wireRatingC: 150, protector: { kind: 'breaker', ratingA } })
      .byCurrent;
  expect([by(7), by(7.01), by(310), by(310.01)]).toEqual([20, 18, -3, null]);
});

test('the longest run is longer where the conductor is colder', () => {
  const at = (conductorC?: number) =>
    longestRun({ awg: 20, currentA: 5, dropV: 0.5, ...(conductorC === undefined ? {} : { conductorC }) });
  expect(at()).toBe(at(20));
  expect(at(100)).toBeLessThan(at(20));
  expect(at(0)).toBeGreaterThan(at(20));
});
