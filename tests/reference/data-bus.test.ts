import { describe, expect, test } from 'vitest';
import { arinc429LabelBits, arinc429SpeedOf, arinc429WordOf } from '../../libs/rules/src/calculations/arinc-429.js';
import { arinc429Receivers } from '../../libs/rules/src/facts/data-bus.js';

describe('ARINC 429', () => {
  // Computed: each label with its eight bits turned round.
  test.each([
    ['012', 0x50],
    ['114', 0x32],
    ['116', 0x72],
    ['121', 0x8a],
    ['203', 0xc1],
    ['310', 0x13],
    ['311', 0x93],
    ['312', 0x53],
    ['377', 0xff],
    ['000', 0x00],
  ])('label %s stands in its word as %i', (label, bits) => {
    expect(arinc429LabelBits(label)).toBe(bits);
  });

  test('the worked word of the arinc429 library: label 012, data 2000 (250 kt by eighths), status 3', () => {
    expect(arinc429WordOf({ label: '012', sdi: 0, data: 2000, ssm: 3 }).toString(16)).toBe('e01f4050');
    expect(2000 * 0.125).toBe(250);
  });

  test('label 203, 5,000 ft with its lowest bit in bit 12, status 3 (scaling from memory)', () => {
    expect(arinc429WordOf({ label: '203', sdi: 0, data: 5000 * 2, ssm: 3 }).toString(16)).toBe('e09c40c1');
  });

  test('the last bit makes every number of ones odd, whatever the word', () => {
    for (const label of ['000', '012', '203', '377'])
      for (const data of [0, 1, 3, 2000, 524_287])
        for (const [sdi, ssm] of [
          [0, 0],
          [1, 2],
          [3, 3],
        ] as const) {
          const word = arinc429WordOf({ label, sdi, data, ssm });
          expect(word.toString(2).replaceAll('0', '').length % 2).toBe(1);
          // Each part is found again where it was put.
          expect([word % 256, Math.floor(word / 256) % 4, Math.floor(word / 1024) % 524_288]).toEqual([
            arinc429LabelBits(label),
            sdi,
            data,
          ]);
          expect(Math.floor(word / 2 ** 29) % 4).toBe(ssm);
        }
  });

  test('a part that does not fit its bits is refused by name', () => {
    const word = { label: '012', sdi: 0, data: 0, ssm: 0 };
    expect(() => arinc429WordOf({ ...word, label: '400' })).toThrow(/octal/);
    for (const label of ['018', '0012', '1112', '']) expect(() => arinc429WordOf({ ...word, label })).toThrow(/octal/);
    expect(() => arinc429WordOf({ ...word, sdi: 4 })).toThrow(/sdi/);
    expect(() => arinc429WordOf({ ...word, data: 524_288 })).toThrow(/data/);
    expect(() => arinc429WordOf({ ...word, ssm: 1.5 })).toThrow(/ssm is 1.5/);
  });

  test.each([
    [11_999, null],
    [12_000, 'low'],
    [12_500, 'low'],
    [14_500, 'low'],
    [14_501, null],
    [98_999, null],
    [99_000, 'high'],
    [100_000, 'high'],
    [101_000, 'high'],
    [101_001, null],
  ] as const)('%i bits a second: %s (from memory)', (bitsPerS, speed) => {
    expect(arinc429SpeedOf(bitsPerS)).toBe(speed);
  });

  test('one transmitter drives at most 20 receivers', () => {
    expect(arinc429Receivers.value).toBe(20);
  });
});
