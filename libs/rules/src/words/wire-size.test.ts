import { expect, it } from 'vitest';
import { wireTable } from '../facts/wire.js';
import { readLargeWire, wireSizeWords } from './wire-size.js';

it('writes each gauge of table 11-9 as the trade does', () => {
  expect(wireTable.value.map(({ awg }) => wireSizeWords(awg)).slice(-6)).toEqual([
    '2',
    '1',
    '1/0',
    '2/0',
    '3/0',
    '4/0',
  ]);
  expect([wireSizeWords(24), wireSizeWords(-4)]).toEqual(['24', '-4']);
});

it.each([
  ['1/0', 0],
  ['2/0', -1],
  ['3/0', -2],
  ['4/0', -3],
  ['0', 0],
  ['00', -1],
  ['000', -2],
  ['0000', -3],
  [' 2 / 0 ', -1],
])('reads %s as %i', (text, awg) => {
  expect(readLargeWire(text)).toBe(awg);
});

it.each(['', '1', '20', '5/0', '0/1', '00000', '2/0 copper', '-1'])('finds no large size in %j', (text) => {
  expect(readLargeWire(text)).toBeNull();
});

it('reads back what it writes', () => {
  for (const { awg } of wireTable.value.filter((row) => row.awg <= 0))
    expect(readLargeWire(wireSizeWords(awg))).toBe(awg);
});
