import { expect, it } from 'vitest';
import { RateLimit } from './rate.js';

it('lets a minute of requests through at once, then as many as come back, for each caller alone', () => {
  const limit = new RateLimit(60);
  const taken = Array.from({ length: 61 }, () => limit.take('one', 0));
  expect(taken).toEqual([...Array<number>(60).fill(0), 1]);
  expect(limit.take('other', 0)).toBe(0);
  expect(limit.take('one', 999)).toBe(1);
  expect(limit.take('one', 1001)).toBe(0);
  expect(limit.take('one', 1002)).toBe(1);
  // Nobody saves up more than a minute's worth.
  const later = Array.from({ length: 61 }, () => limit.take('one', 3_600_000));
  expect(later.filter((wait) => wait === 0)).toHaveLength(60);
});

it('names the whole time to wait where requests come back slowly', () => {
  const limit = new RateLimit(2);
  expect([limit.take('one', 0), limit.take('one', 0), limit.take('one', 0)]).toEqual([0, 0, 30]);
  expect(limit.take('one', 29_000)).toBe(1);
  expect(limit.take('one', 30_000)).toBe(0);
});
