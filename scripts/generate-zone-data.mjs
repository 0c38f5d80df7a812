// Writes libs/rules/src/time/zone-data.ts: the UTC offset changes of 1990 to 2061 as this Node knows them.
// The rule library carries its own table so that a browser and a server with different zone data never disagree.
// Run by hand when a zone's law changes: node scripts/generate-zone-data.mjs (add --check to compare only).
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import prettier from 'prettier';

const target = fileURLToPath(new URL('../libs/rules/src/time/zone-data.ts', import.meta.url));
const dayMs = 86_400_000;
const from = Date.UTC(1990, 0, 1);
const to = Date.UTC(2062, 0, 1);

/** Present names that Intl lists only under their older form. */
const presentNames = [
  'UTC',
  'Africa/Asmara',
  'America/Argentina/Buenos_Aires',
  'America/Argentina/Catamarca',
  'America/Argentina/Cordoba',
  'America/Argentina/Jujuy',
  'America/Argentina/Mendoza',
  'America/Atikokan',
  'America/Indiana/Indianapolis',
  'America/Kentucky/Louisville',
  'America/Nuuk',
  'Asia/Ho_Chi_Minh',
  'Asia/Kathmandu',
  'Asia/Kolkata',
  'Asia/Yangon',
  'Atlantic/Faroe',
  'Europe/Kyiv',
  'Pacific/Chuuk',
  'Pacific/Kanton',
  'Pacific/Pohnpei',
];

function offsetReader(zone) {
  const format = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset', year: 'numeric' });
  return (ms) => {
    const name = format.formatToParts(ms).find((part) => part.type === 'timeZoneName').value;
    const match = /^GMT(?:([+-])(\d\d):(\d\d))?$/.exec(name);
    if (!match)
      throw new Error(`${zone}: offset "${name}" is not in whole minutes; leave the zone out or start later.`);
    return match[1] ? (match[1] === '-' ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3])) : 0;
  };
}

/** [first offset, [[minute of change, offset after], ...]] by a look every quarter day and a search between looks. */
function changesOf(zone) {
  const offsetOf = offsetReader(zone);
  const first = offsetOf(from);
  const changes = [];
  let before = first;
  for (let ms = from + dayMs / 4; ms <= to; ms += dayMs / 4) {
    const after = offsetOf(ms);
    if (after === before) continue;
    let low = ms - dayMs / 4;
    let high = ms;
    while (high - low > 60_000) {
      const middle = low + Math.floor((high - low) / 120_000) * 60_000;
      if (offsetOf(middle) === before) low = middle;
      else high = middle;
    }
    changes.push([high / 60_000, after]);
    before = after;
  }
  return [first, changes];
}

// Printable characters without quote, backslash and the separator space.
const letters = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)).filter((c) => !`'"\\\``.includes(c));

function build() {
  const names = [...new Set([...Intl.supportedValuesOf('timeZone'), ...presentNames])].sort();
  const zones = names.map((name) => [name, ...changesOf(name)]);
  const counts = new Map();
  for (const [, , changes] of zones) {
    changes.forEach(([minute], i) => {
      if (i === 0) return;
      const step = minute - changes[i - 1][0];
      counts.set(step, (counts.get(step) ?? 0) + 1);
    });
  }
  const steps = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([step]) => step);
  const base = letters.length - Math.ceil(steps.length / letters.length) - 1;
  const codeOf = new Map(
    steps.map((step, i) => [
      step,
      i < base ? letters[i] : letters[base + Math.floor((i - base) / base)] + letters[(i - base) % base],
    ]),
  );
  const patterns = new Map();
  const rows = zones.map(([name, first, changes]) => {
    const offsets = [first];
    for (const [, offset] of changes) if (!offsets.includes(offset)) offsets.push(offset);
    const order = changes.map(([, offset]) => offsets.indexOf(offset));
    const pattern = changes.map(([minute], i) => (i === 0 ? '' : codeOf.get(minute - changes[i - 1][0]))).join('');
    // Most zones swing between two offsets: then the order needs no writing down.
    const swings = order.every((n, i) => n === (i % 2 === 0 ? 1 : 0));
    const key = pattern + ' ' + (swings ? '' : order.map((n) => n.toString(36)).join(''));
    if (!patterns.has(key)) patterns.set(key, patterns.size);
    return [name, `${offsets.join(',')} ${changes[0]?.[0] ?? 0} ${changes.length === 0 ? -1 : patterns.get(key)}`];
  });
  return { steps, base, patterns: [...patterns.keys()], rows };
}

async function render() {
  const { steps, base, patterns, rows } = build();
  const shared = new Map();
  for (const [name, row] of rows) shared.set(row, [...(shared.get(row) ?? []), name]);
  const lines = [...shared].map(([row, names]) => `  '${row}|${names.join(' ')}',`);
  const text = `// Written by scripts/generate-zone-data.mjs; not edited by hand.
/** Edition of the zone database that the table was made from. */
export const zoneDataVersion = '${process.versions.tz}';

/** Characters of the patterns, in the order of their numbers. */
export const letters = '${letters.join('')}';

/** Patterns name the first \`oneLetter\` steps by one character, the others by two. */
export const oneLetter = ${base};

/** Minutes between one change and the next. */
export const steps: readonly number[] = '${steps.map((s) => s.toString(36)).join(' ')}'
  .split(' ')
  .map((text) => parseInt(text, 36));

/** Steps from change to change, then the order of the offsets (left out where two offsets alternate). */
export const patterns: readonly string[] = [
${patterns.map((p) => `  '${p}',`).join('\n')}
];

/** "offsets in minutes east of UTC, minute of the first change since 1970, number of the pattern (-1: none)|zones". */
export const zones: readonly string[] = [
${lines.join('\n')}
];
`;
  return prettier.format(text, { parser: 'typescript', printWidth: 120, singleQuote: true, trailingComma: 'all' });
}

const text = await render();
if (process.argv.includes('--check')) {
  if (readFileSync(target, 'utf8') !== text) {
    console.error(
      `Zone data of this Node (${process.versions.tz}) differ from the table. Run: node scripts/generate-zone-data.mjs`,
    );
    process.exitCode = 1;
  }
} else {
  writeFileSync(target, text);
  console.log(`${target}: ${Math.round(text.length / 1024)} KB, zone data ${process.versions.tz}`);
}
