import { mostRows } from './csv.js';
import { allKinds } from './kinds/all.js';
import { limitWords } from './upload.js';

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
  `Each file is a table in CSV (RFC 4180) with a header row, in UTF-8 with or without a byte order mark. The delimiter is a comma, a semicolon or a tab, whichever the header uses; lines end in CRLF, LF or CR. Letter case, blanks and dashes in column names do not matter. Columns that are not listed here are passed over and named in the report; blank lines and blank cells at the end of a row are skipped. At most ${limitWords()}, with ${mostRows.toLocaleString('en-US')} rows each.`,
  `The kind of a file follows from its header, so its name is free. Files may come together in one import or one after the other, in any order: rows are taken in the order of the kinds below, and within a kind by date.`,
  `An empty cell means that nobody recorded it. It never means "none" and never overwrites what is stored. A row that is stored already does nothing; sending the same files twice changes nothing. What it fills in where nobody recorded anything is recorded as an amendment. Where it says otherwise than what is recorded, the dry run shows both, and nothing is overwritten until a person decides: on the Import screen row by row, with the command by \`--differences take\` or \`keep\`. Undecided, nothing is loaded.`,
  `Every bad row is named with file, line, column, reason and way out; as long as one row is bad, nothing is loaded. The load then goes aircraft by aircraft, each of them whole or not at all. One that is stopped or cut off goes on when it is started again with the same files: what is in says nothing new. Try it first: \`npm run import -- file.csv ...\` is a dry run, \`--load\` loads.`,
  `Beside tables, aircraft records in JSON are taken, as this program writes them out: one aircraft or a whole house with every entry. Their form is docs/aircraft-records.schema.json. The entries are replayed under the same rules as any recording, and have to give the record that the file states; they are recorded anew by whoever takes them in, at that time. An aircraft that is here already gets what came since; one whose history went another way here is refused. At most 5,000 entries an aircraft.`,
  `A unit whose type the catalogue does not have is taken as an uncatalogued unit, and the dry run names it: what hangs on it cannot be told. Once the type is in the catalogue, the same file again ties the unit to it. A unit is the same one again by its short name or by its serial number; where only type and place are alike, the dry run asks.`,
  `Fitting a unit calls for entries and tests of its own, as on every screen; they belong into the file of records, of the day of the fitting or later. Two whole fleets as examples lie in \`apps/api/samples\`.`,
];

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('<', '\\<');
}
