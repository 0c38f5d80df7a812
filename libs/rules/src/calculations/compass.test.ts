import { expect, test } from 'vitest';
import type { CompassReadings } from '../dossier/readings.js';
import { judgeCompass } from './compass.js';

function swing(offDeg: number, stepDeg = 30): CompassReadings {
  const headings = Array.from({ length: 360 / stepDeg }, (_, i) => i * stepDeg);
  const points = headings.map((headingDeg) => ({ headingDeg, compassDeg: (headingDeg + offDeg + 360) % 360 }));
  return { points, enginesRunning: true, radiosStated: true, electricLoadsPlacarded: null };
}

test('10 degrees pass, more fails, north included', () => {
  expect([9.9, 10, 10.1, -10, -10.1].map((off) => judgeCompass(swing(off)).outcome)).toEqual([
    'met',
    'met',
    'not-met',
    'met',
    'not-met',
  ]);
});

test('more than 10 from electric loads passes where the placard names them and a stabilized indicator is fitted', () => {
  const named = { ...swing(12), electricLoadsPlacarded: true };
  expect(judgeCompass(named, 'airplane', true).outcome).toBe('met');
  expect(judgeCompass(named, 'airplane', false).outcome).toBe('not-met');
  expect(judgeCompass(named).outcome).toBe('cannot-tell');
  expect(judgeCompass({ ...swing(10), electricLoadsPlacarded: true }).outcome).toBe('met');
  expect(judgeCompass({ ...swing(12), electricLoadsPlacarded: false }).outcome).toBe('not-met');
});

test('steps of at most 30 degrees all the way round; rotorcraft 45', () => {
  expect(judgeCompass(swing(1, 45)).outcome).toBe('not-met');
  expect(judgeCompass(swing(1, 45), 'rotorcraft').outcome).toBe('met');
  const gap = { ...swing(1), points: swing(1).points.filter(({ headingDeg }) => headingDeg !== 0) };
  expect(judgeCompass(gap).outcome).toBe('not-met');
  expect(judgeCompass({ ...swing(1), points: [{ headingDeg: 360, compassDeg: 1 }] }).outcome).toBe('not-met');
});

test('nothing read, engines or radios not stated: cannot tell', () => {
  expect(judgeCompass({ ...swing(1), points: [] }).outcome).toBe('cannot-tell');
  expect(judgeCompass({ ...swing(1), enginesRunning: null }).outcome).toBe('cannot-tell');
  expect(judgeCompass({ ...swing(1), radiosStated: null }).outcome).toBe('cannot-tell');
  expect(judgeCompass({ ...swing(1), enginesRunning: false }).outcome).toBe('not-met');
});

test('headings in any order have the same steps', () => {
  const { points, ...rest } = swing(1);
  const mixed = [...points.slice(6), ...points.slice(0, 6)].reverse();
  expect(judgeCompass({ ...rest, points: mixed }).points.find(({ what }) => what === 'step')?.value).toBe(30);
  expect(judgeCompass({ ...rest, points: mixed }).outcome).toBe('met');
  const three = [200, 100, 5].map((headingDeg) => ({ headingDeg, compassDeg: headingDeg }));
  expect(judgeCompass({ ...rest, points: three }).points.find(({ what }) => what === 'step')?.value).toBe(165);
});

test('a deviation within the limit keeps it although a placard names electric loads', () => {
  const [point] = judgeCompass({ ...swing(9), electricLoadsPlacarded: true }).points;
  expect(point).toMatchObject({ outcome: 'met', limit: { most: 10 } });
});

test('one heading that rests on the placard is enough to ask for the stabilized indicator, by its name', () => {
  const even = swing(0);
  const points = even.points.map((point, i) => (i === 0 ? { ...point, compassDeg: point.compassDeg + 12 } : point));
  const { outcome, points: judgedPoints } = judgeCompass({ ...even, points, electricLoadsPlacarded: true });
  expect(outcome).toBe('cannot-tell');
  expect(judgedPoints.find(({ what }) => what === 'stabilized-direction-indicator')?.outcome).toBe('cannot-tell');
});
