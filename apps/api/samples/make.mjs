// Makes the two sample fleets: clean/ loads without a bad row, messy/ has the mess that real lists have, and
// messy/expected.json names each bad row that was put in. Everything is invented. Same date and seed, same files.
//   node apps/api/samples/make.mjs [--date 2026-11-25] [--into <folder>] [--count 44]
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fleetOf } from './fleet.mjs';
import { withMess } from './mess.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const option = (name, otherwise) => {
  const at = process.argv.indexOf(name);
  return at < 0 ? otherwise : process.argv[at + 1];
};
const today = option('--date', '2026-11-25');
const into = resolve(option('--into', here));
if (!/^\d{4}-\d{2}-\d{2}$/.test(today ?? '')) {
  console.error('--date takes a day such as 2026-11-25.');
  process.exit(1);
}

/** RFC 4180: quotes where the cell holds a delimiter, a quote or a line break. */
function csv(rows, { delimiter = ',', lineEnd = '\r\n', bom = false, header = undefined } = {}) {
  const names = Object.keys(rows[0]);
  const cell = (value) => (/[",;\t\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value);
  const lines = [
    header ?? names.join(delimiter),
    ...rows.map((row) => names.map((name) => cell(String(row[name] ?? ''))).join(delimiter)),
  ];
  return (bom ? '\uFEFF' : '') + lines.map((line) => line + lineEnd).join('');
}

function write(folder, name, text) {
  mkdirSync(join(into, folder), { recursive: true });
  writeFileSync(join(into, folder, name), text);
}

const clean = fleetOf({ today, seed: 20, from: 100, count: Number(option('--count', '44')) });
for (const [kind, rows] of Object.entries(clean)) write('clean', `${kind}.csv`, csv(rows));

const { files, expected } = withMess(fleetOf({ today, seed: 77, from: 300, count: 42 }), { today, seed: 5 });
for (const { kind, rows, style } of files) write('messy', `${kind}.csv`, csv(rows, style));
write('messy', 'expected.json', `${JSON.stringify(expected, null, 2)}\n`);

const count = (fleet) => Object.values(fleet).reduce((sum, rows) => sum + rows.length, 0);
console.log(`clean: ${clean.aircraft.length} aircraft, ${count(clean)} rows`);
console.log(`messy: ${files.reduce((sum, { rows }) => sum + rows.length, 0)} rows, ${expected.length} of them bad`);
