import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../apps/api/src/imports/csv.js';

/**
 * RFC 4180 section 2, rule by rule, and a reader of our own made from its grammar alone, against which the reader in
 * use is held for the sample files and for random tables.
 */
const read = (text: string) => readTable({ name: 'x.csv', bytes: new TextEncoder().encode(text) });
const cells = (text: string) => [read(text).header, ...read(text).rows.map((row) => row.cells)];

describe('RFC 4180 section 2', () => {
  it('rule 1: records on lines of their own, ended by CRLF', () => {
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });
  it('rule 2: the last record may end without one', () => {
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'));
  });
  it('rule 3: a header line with the names of the fields', () => {
    expect(read('field_name,other_name\r\naaa,bbb\r\n')).toMatchObject({
      header: ['field_name', 'other_name'],
      rows: [{ line: 2, cells: ['aaa', 'bbb'] }],
    });
  });
  it('rule 5: fields may be in double quotes', () => {
    expect(cells('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx'));
  });
  it('rule 6: line breaks, quotes and commas inside quotes belong to the field', () => {
    expect(cells('a,b,c\r\n"aaa","b\r\nbb","c,cc"\r\nzzz,yyy,xxx')).toEqual([
      ['a', 'b', 'c'],
      ['aaa', 'b\nbb', 'c,cc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });
  it('rule 7: a quote inside quotes is written twice', () => {
    expect(cells('a,b,c\r\n"aaa","b""bb","ccc"')[1]).toEqual(['aaa', 'b"bb', 'ccc']);
  });
});

describe('against a reader made from the grammar', () => {
  const samples = fileURLToPath(new URL('../../apps/api/samples', import.meta.url));
  const names = ['clean', 'messy'].flatMap((folder) =>
    readdirSync(`${samples}/${folder}`).flatMap((name) => (name.endsWith('.csv') ? [`${folder}/${name}`] : [])),
  );

  it.each(names)('%s', (name) => {
    const bytes = readFileSync(`${samples}/${name}`);
    const table = readTable({ name, bytes });
    const [header = [], ...rows] = byGrammar(bytes.toString('utf8').replace(/^\uFEFF/, ''), table.delimiter);
    expect(table.header).toHaveLength(header.filter((cell) => cell !== '').length);
    expect(table.rows.map((row) => row.cells)).toEqual(
      rows.map((row) => row.slice(0, table.header.length).map((cell) => cell.trim())),
    );
    expect(rows.length).toBeGreaterThan(0);
  });

  it('random tables come back as they were written', () => {
    const cell = fc.string({
      unit: fc.constantFrom('a', 'B', '7', '"', ',', ';', '\t', '\n', ' ', 'é', '飛'),
      maxLength: 8,
    });
    const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(table, fc.constantFrom('\r\n', '\n', '\r'), (rows, lineEnd) => {
        const quoted = rows.map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(',')).join(lineEnd);
        const found = read(`one,two,three${lineEnd}${quoted}${lineEnd}`);
        const wanted = rows
          .map((row) => row.map((each) => each.trim()))
          .filter((row) => row.some((each) => each !== ''));
        expect(found.bad).toEqual([]);
        expect(found.rows.map((row) => row.cells)).toEqual(wanted);
      }),
      { numRuns: 300, seed: 4180 },
    );
  });
});

/** The grammar of RFC 4180, one character after the other. */
function byGrammar(text: string, delimiter: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const each = text[at] ?? '';
    if (quoted && each === '"' && text[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else if (each === '"') quoted = !quoted;
    else if (!quoted && each === delimiter) {
      rows.at(-1)?.push(cell);
      cell = '';
    } else if (!quoted && each === '\n') {
      rows.at(-1)?.push(cell.replace(/\r$/, ''));
      cell = '';
      rows.push([]);
    } else cell += each;
  }
  if (cell !== '') rows.at(-1)?.push(cell);
  return rows.filter((row) => row.length > 0);
}
