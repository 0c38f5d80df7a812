import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { inRoot } from '../lib/paths.mjs';
import { home, placeOf } from './about.mjs';
import { reasonFor, staleReasons } from './reasons.mjs';
import { inSample, intervalOf } from './sample.mjs';

const page = 'docs/mutation.md';
const columns = [
  'Folder',
  'Changes',
  'Noticed',
  'by what is written down alone',
  'too slow',
  'Not noticed',
  'no test there',
  'Left aside',
  'Score',
  'Measured',
];

/**
 * Writes what a run found into the page: the folders that it tried whole, or of which it drew a sample of so many percent; the others
 * stay as they were measured. Returns their names, and the single reasons that fit nothing (which a sample cannot tell).
 */
export function record(report, { wanted, isMutated, day, percent }) {
  const tried = triedPlaces(report);
  const whole = wholePlaces(tried, wanted, isMutated).map(([place, mutants]) => [
    place,
    mutants.filter((each) => inSample(each, percent)),
  ]);
  const before = existsSync(inRoot(page)) ? readFileSync(inRoot(page), 'utf8') : '';
  const rows = new Map(rowsOf(before));
  const sections = new Map(sectionsOf(before));
  for (const [place, mutants] of whole) {
    rows.set(place, rowOf(place, mutants, measuredOf(mutants, percent, day)));
    sections.set(place, survivorsOf(mutants));
  }
  writeFileSync(inRoot(page), pageOf(rows, sections));
  const survivors = [...tried.values()].flatMap(({ mutants }) => mutants.filter(isLeft));
  return {
    places: whole.map(([place]) => place),
    stale: percent === 100 ? staleReasons(survivors, Object.keys(report.files)) : [],
  };
}

/** By place: the files that the report knows, and the changes made in them. */
function triedPlaces(report) {
  const tests = new Map(Object.values(report.testFiles ?? {}).flatMap(({ tests }) => tests.map((t) => [t.id, t.name])));
  const tried = new Map();
  for (const [file, { source, mutants }] of Object.entries(report.files)) {
    const lines = source.split('\n');
    const place = nameOf(file);
    const known = mutants.map((each) => ({
      ...each,
      file,
      code: codeOf(lines, each.location),
      line: lines[each.location.start.line - 1],
      tests,
    }));
    tried.set(place, {
      files: [...(tried.get(place)?.files ?? []), file],
      mutants: [...(tried.get(place)?.mutants ?? []), ...known],
    });
  }
  return tried;
}

function wholePlaces(tried, wanted, isMutated) {
  const all = readdirSync(inRoot(home), { recursive: true }).map((name) => join(home, name).split(sep).join('/'));
  // A file with nothing to change in it may not be in the report.
  const isTried = (files, file) =>
    files.includes(file) || wanted.some((each) => file === each || file.startsWith(`${each}/`));
  return [...tried].flatMap(([place, { files, mutants }]) =>
    all.filter((file) => isMutated(file) && nameOf(file) === place).every((file) => isTried(files, file))
      ? [[place, mutants]]
      : [],
  );
}

function nameOf(file) {
  return placeOf(file).slice(home.length).replace(/\/$/, '');
}

function codeOf(lines, { start, end }) {
  if (start.line === end.line) return lines[start.line - 1].slice(start.column - 1, end.column - 1);
  return `${lines[start.line - 1].slice(start.column - 1)} …`;
}

function rowOf(place, mutants, day) {
  const count = (wanted) => mutants.filter(({ status }) => wanted === status).length;
  const [killed, slow, survived, unreached] = ['Killed', 'Timeout', 'Survived', 'NoCoverage'].map(count);
  const byRecord = mutants.filter(
    ({ status, killedBy, tests }) => status === 'Killed' && tests.get(killedBy?.[0])?.includes('written down'),
  );
  const valid = killed + slow + survived + unreached;
  return [
    place,
    valid,
    killed + slow,
    byRecord.length,
    slow,
    survived,
    unreached,
    mutants.length - valid,
    score(killed + slow, valid),
    day,
  ];
}

function measuredOf(mutants, percent, day) {
  if (percent === 100) return `${day}, whole`;
  const tried = mutants.filter(({ status }) => ['Killed', 'Timeout', 'Survived', 'NoCoverage'].includes(status));
  const noticed = tried.filter(({ status }) => status === 'Killed' || status === 'Timeout');
  const [least, most] = intervalOf(noticed.length, tried.length);
  return `${day}, sample of ${percent} %, 95 % interval ${least} to ${most} %`;
}

function score(noticed, valid) {
  return `${((100 * noticed) / valid).toFixed(1)} %`;
}

/** Survivors by reason, the unexplained ones one by one. */
function survivorsOf(mutants) {
  const left = mutants.filter(isLeft);
  const byReason = groupBy(left, reasonFor);
  const explained = [...byReason].filter(([reason]) => reason !== null).sort(([, a], [, b]) => b.length - a.length);
  const open = byReason.get(null) ?? [];
  return [
    ...explained.map(([reason, each]) => `- ${reason} (${each.length}): ${placesIn(each)}`),
    ...(open.length > 0
      ? [`- Wants a test, or a reason (${open.length}):`, ...open.map((each) => `  - ${changeOf(each)}`)]
      : []),
  ].join('\n');
}

function isLeft({ status }) {
  return status === 'Survived' || status === 'NoCoverage';
}

function placesIn(mutants) {
  const byFile = groupBy(mutants, ({ file }) => file.split('/').at(-1));
  return [...byFile]
    .map(([file, each]) => `${file}:${[...new Set(each.map(lineOf))].sort((a, b) => a - b).join(',')}`)
    .join(' ');
}

function changeOf({ file, location, code, replacement }) {
  const short = (text) => '`' + text.replaceAll(/\s+/g, ' ').replaceAll('`', "'").slice(0, 70) + '`';
  return `${file.split('/').at(-1)}:${location.start.line} ${short(code)} to ${short(replacement ?? '')}`;
}

function lineOf({ location }) {
  return location.start.line;
}

function groupBy(list, keyOf) {
  const groups = new Map();
  for (const each of list) groups.set(keyOf(each), [...(groups.get(keyOf(each)) ?? []), each]);
  return groups;
}

function rowsOf(text) {
  return [...text.matchAll(/^\| ((?:[a-z][a-z-]*\/?)+) +\|(.*)\|$/gm)]
    .filter(([, place]) => place !== 'all')
    .map(([, place, rest]) => [
      place,
      [place, ...rest.split('|').map((cell) => (/^ *\d+ *$/.test(cell) ? Number(cell) : cell.trim()))],
    ]);
}

function sectionsOf(text) {
  return [...text.matchAll(/^### (\S+)\n\n([\s\S]*?)(?=\n\n### |\n*$(?![\s\S]))/gm)].map(([, place, body]) => [
    place,
    body.trim(),
  ]);
}

function pageOf(rows, sections) {
  const sorted = [...rows.values()].sort(([a], [b]) => (a < b ? -1 : 1));
  const scales = sorted.map((row) => 100 / Number(/sample of (\d+) %/.exec(row.at(-1))?.[1] ?? 100));
  const sum = (column) => Math.round(sorted.reduce((total, row, index) => total + row[column] * scales[index], 0));
  const sums = [1, 2, 3, 4, 5, 6, 7].map(sum);
  const [valid, noticed] = sums;
  const table = [
    columns,
    columns.map(() => '---'),
    ...sorted,
    ['all', ...sums, score(noticed, valid), scales.every((each) => each === 1) ? '' : 'samples scaled up'],
  ];
  return `${intro}\n${table.map((row) => `| ${row.join(' | ')} |`).join('\n')}\n\n${legend}\n${[...sections]
    .filter(([, body]) => body !== '')
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([place, body]) => `\n### ${place}\n\n${body}\n`)
    .join('')}`;
}

const intro = `# Mutation score of the rule library

Written by \`npm run mutate -- <folder> ...\` (\`scripts/mutate\`): it changes \`libs/rules/src\` in small ways, one at a time, and asks
whether a test about that place notices. A run renews the rows and lists of the folders that it tries whole, here; with no folder it tries
all. Nothing below is typed by hand; a reason for a survivor is written in \`scripts/mutate/reasons.mjs\`, or
in \`scripts/mutate/reasons/\` if it is about one place.
`;
const legend = `- A change is held to the tests beside it and to published figures (\`tests/reference\`), not to tests that assess a whole aircraft: a
  topic of the rules to the tests of that topic, what all topics share (\`rules\`) to those of all rules.
- "By what is written down alone": only the comparison with \`libs/rules/stated\` or \`libs/rules/worked\` noticed it. That says that a person
  would see the difference, not that a source was checked.
- "Left aside": what runs once when a module is loaded, mostly texts, sources and tables of names.
- A change is shown to about five seconds of tests, quick ones first, a part of them for what is written down. What only a long search would notice counts as not noticed, most of
  all in \`way-back\`; the less a busy machine does in five seconds, the lower the score.
- A sample is drawn by the number of the change with a fixed seed: \`SAMPLE=20 npm run mutate -- <folder>\`. Its row counts what was
  drawn; the last row scales it up.
- Tables of facts, schemas of catalogue and dossier, zone data and the list of rules are not changed: they are held to their sources by
  \`tests/reference\`, or have no behaviour.
- Lines are those of the day of the measurement.

## Survivors
`;
