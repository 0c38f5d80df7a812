import { expect, test } from 'vitest';
import { judgeCorrespondence } from './correspondence.js';

test('125 ft at each point, either way; one bad point fails; no point cannot tell', () => {
  const off = (...feet: number[]) =>
    judgeCorrespondence({ points: feet.map((ft, i) => ({ altimeterFt: i * 1000, reportedFt: i * 1000 + ft })) })
      .outcome;
  expect([off(124), off(125), off(126), off(-125), off(-126), off(0, 0, 126), off()]).toEqual([
    'met',
    'met',
    'not-met',
    'met',
    'not-met',
    'not-met',
    'cannot-tell',
  ]);
});
