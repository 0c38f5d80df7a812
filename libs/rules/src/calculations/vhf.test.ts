import { expect, test } from 'vitest';
import { CalculationError } from './errors.js';
import { vhfChannel, vhfHarmonic } from './vhf.js';

test('the order is the one that lands nearest', () => {
  for (let kHz = 118_000; kHz < 137_000; kHz += 25) {
    const { order, offsetMHz } = vhfHarmonic(kHz / 1000);
    for (const other of [order - 1, order + 1]) {
      expect(Math.abs(offsetMHz)).toBeLessThanOrEqual(Math.abs((other * kHz) / 1000 - 1575.42) + 1e-4);
    }
  }
});

test('above L1 the first harmonic is the nearest there is', () => {
  expect(vhfHarmonic(5000)).toEqual({ order: 1, landsMHz: 5000, offsetMHz: 3424.58 });
});

test.each([0, -121.5, NaN])('%d MHz is refused', (frequency) => {
  expect(() => vhfHarmonic(frequency)).toThrow(CalculationError);
});

test('a channel name is nothing before and nothing behind its figures', () => {
  for (const name of [
    'x118.005',
    '118.005x',
    '1118.005',
    '118.0055',
    '118',
    118 as never,
    118.005 as never,
    null as never,
  ])
    expect(vhfChannel(name)).toBeNull();
});
