import { describe, expect, it } from 'vitest';
import { readTable } from './csv.js';

const read = (text: string | Uint8Array) =>
  readTable({ name: 'x.csv', bytes: typeof text === 'string' ? new TextEncoder().encode(text) : text });

describe('readTable', () => {
  it.each([
    ['comma', 'a,b\r\n1,2\r\n', ','],
    ['semicolon', 'a;b\n1;2\n', ';'],
    ['tab', 'a\tb\r1\t2\r', '\t'],
    ['semicolon with decimal commas', 'a;b\n1;2,5\n', ';'],
    ['semicolon, commas inside quotes in the header', '"a, or c, or d";b\n1;2\n', ';'],
  ])('finds the delimiter: %s', (_, text, delimiter) => {
    expect(read(text)).toMatchObject({ delimiter, bad: [] });
    expect(read(text).rows[0]?.cells).toHaveLength(2);
  });

  it('takes a byte order mark off, and names columns alike however they are written', () => {
    const { header } = read('\uFEFFMax weight (lb);ENGINE-COUNT; serial \n1;2;3\n');
    expect(header).toEqual(['max_weight_lb', 'engine_count', 'serial']);
  });

  it('tells the line on which a row begins, over blank lines and breaks inside cells', () => {
    const { rows } = read('a,b\r\n\r\n"one\r\ntwo",x\r\n,\r\nlast,y\r\n');
    expect(rows.map(({ line, cells }) => [line, cells[0]])).toEqual([
      [3, 'one\ntwo'],
      [6, 'last'],
    ]);
  });

  it('passes over blank cells at the end, and names a row that really has too many', () => {
    const { rows, bad } = read('a,b,,\n1,2,,,\n3,4,5\n6\n');
    expect(rows.map(({ cells }) => cells)).toEqual([
      ['1', '2'],
      ['6', ''],
    ]);
    expect(bad).toMatchObject([{ line: 3, value: '5', reason: 'The row has more cells than the header.' }]);
  });

  it('goes on after a quote that stands wrong', () => {
    const { rows, bad } = read('a,b\n1,x"y\n2,z\n');
    expect(rows.map(({ cells }) => cells[0])).toEqual(['2']);
    expect(bad).toMatchObject([{ line: 2, reason: 'A quote stands where none may be.' }]);
  });

  it('names a quote that is never closed', () => {
    expect(read('a,b\n1,"x\n2,z\n').bad).toMatchObject([{ reason: 'A quote is opened here and never closed.' }]);
  });

  it('names the line of a character that is not UTF-8', () => {
    const bytes = new Uint8Array([
      ...new TextEncoder().encode('a,b\nok,ok\nM'),
      0xfc,
      ...new TextEncoder().encode('ller,x\n'),
    ]);
    expect(read(bytes).bad).toMatchObject([{ line: 3, reason: 'A character here is not UTF-8.' }]);
  });

  it.each([
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x61, 0x00]), 'The file is in UTF-16.'],
    ['a workbook', new Uint8Array([0x50, 0x4b, 3, 4]), 'This is a workbook, not a CSV file.'],
    ['nothing', new Uint8Array(), 'The file is empty.'],
  ])('refuses %s and says what to do', (_, bytes, reason) => {
    const { bad, rows } = read(bytes);
    expect(rows).toEqual([]);
    expect(bad).toMatchObject([{ reason }]);
    expect(bad[0]?.wayOut).not.toBe('');
  });
});
