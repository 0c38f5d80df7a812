import { expect, test } from 'vitest';
import { ran, unreached } from './unreached.mjs';

const text = 'function a(x) { return x ? one() : two(); } function b() { return 3; }';
const at = (piece) => text.indexOf(piece);
const range = (from, to, count) => ({ startOffset: from, endOffset: to, count });
const process = (counts) => [
  { ranges: [range(0, text.length, 1)] },
  {
    ranges: [
      range(0, at(' function b'), counts.a),
      range(at('one()'), at(' :'), counts.one),
      range(at('two()'), at('; }'), counts.two),
    ],
  },
  { ranges: [range(at('function b'), text.length, counts.b)] },
];

test('a branch and a function that ran in no process are found, where each begins', () => {
  const map = ran(text.length, process({ a: 1, one: 1, two: 0, b: 0 }));
  expect(unreached(text, map)).toEqual([
    { at: at('two()'), piece: 'two()' },
    { at: at('function b'), piece: 'function b() { return 3; }' },
  ]);
});

test('what ran in another process counts', () => {
  const maps = [process({ a: 1, one: 1, two: 0, b: 0 }), process({ a: 1, one: 0, two: 2, b: 1 })].map((each) =>
    ran(text.length, each),
  );
  expect(
    unreached(
      text,
      maps[0].map((each, n) => each | maps[1][n]),
    ),
  ).toEqual([]);
});
