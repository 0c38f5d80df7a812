import { mostRows } from './csv.js';
import { allKinds } from './kinds/all.js';
import { uploadLimits } from './upload.js';

const MEGABYTE = 1_048_576;

/** docs/import-format.md, made from the columns as the program reads them. */
export function formatDocument(): string {
  return [
    '# Files that can be imported',
    'Made from `apps/api/src/imports/kinds`; a test fails when the two differ. To write it anew: `npx vitest run --project shell apps/api/src/imports/format-doc.test.ts -u`.',
    ...general,
    ...allKinds.map(
      ({ kind, says, keySays, columns }) => `## ${kind}

${says}

A row is the same row again by ${keySays}.

| column | needed | meaning | written |
| --- | --- | --- | --- |
${Object.entries(columns)
  .map(
    ([name, { form, required, says: meaning }]) =>
      `| \`${name}\` | ${required ? 'yes' : ''} | ${cell(meaning)} | ${cell(form.written)} |`,
  )
  .join('\n')}`,
    ),
  ].join('\n\n');
}

const general = [
  `Each file is a table in CSV (RFC 4180) with a header row, in UTF-8 with or without a byte order mark. The delimiter is a comma, a semicolon or a tab, whichever the header uses; lines end in CRLF, LF or CR. Letter case, blanks and dashes in column names do not matter. Columns that are not listed here are passed over and named in the report; blank lines and blank cells at the end of a row are skipped. At most ${uploadLimits.files} files of ${uploadLimits.fileBytes / MEGABYTE} MB and ${mostRows.toLocaleString('en-US')} rows each, ${uploadLimits.allBytes / MEGABYTE} MB in all.`,
  `The kind of a file follows from its header, so its name is free. Files may come together in one import or one after the other, in any order: rows are taken in the order of the kinds below, and within a kind by date.`,
  `An empty cell means that nobody recorded it. It never means "none" and never overwrites what is stored. A row that is stored already does nothing; sending the same files twice changes nothing. A row that contradicts a stored entry, reading or defect is bad: what was recorded is corrected on the screen of the aircraft, with the reason.`,
  `Every bad row is named with file, line, column, reason and way out. The load happens all together or not at all: as long as one row is bad, nothing is loaded. Try it first: \`npm run import -- file.csv ...\` is a dry run, \`--load\` loads.`,
  `Fitting a unit calls for entries and tests of its own, as on every screen; they belong into the file of records, of the day of the fitting or later. Two whole fleets as examples lie in \`apps/api/samples\`.`,
];

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('<', '\\<');
}
