import type { BoardCount } from './board.js';
import type { FileSummary, PlanFindings } from './plan.js';
import type { Difference, PlannedAircraft } from './planner.js';
import type { BadRow, Remark } from './problems.js';

export const importModes = ['dry-run', 'load'] as const;
export type ImportMode = (typeof importModes)[number];
export const importStates = ['running', 'checked', 'loaded', 'refused', 'failed', 'interrupted'] as const;
export type ImportState = (typeof importStates)[number];

/** How many bad rows and remarks are kept with a report; the counts are always whole. */
const MOST_LISTED = 2000;

export interface ImportReport {
  readonly files: readonly FileSummary[];
  readonly aircraft: { readonly added: number; readonly changed: number; readonly unchanged: number };
  readonly changes: number;
  readonly badCount: number;
  readonly bad: readonly BadRow[];
  /** Rows that say otherwise than what is recorded. */
  readonly differenceCount: number;
  readonly differences: readonly Difference[];
  readonly remarks: readonly Remark[];
  readonly newOperators: readonly string[];
  readonly newTypes: readonly string[];
  /** Types that the catalogue does not have, with the units that are taken as uncatalogued ones. */
  readonly uncatalogued: readonly { readonly type: string; readonly units: number }[];
  readonly board: readonly BoardCount[];
  /** Why nothing was loaded although no row is bad; null otherwise. */
  readonly problem: { readonly reason: string; readonly wayOut: string } | null;
}

export interface ImportProgress {
  readonly step: string;
  readonly done: number;
  readonly total: number;
}

/** Counts of what the planned aircraft would see; the aircraft themselves are not kept. */
export class Tally {
  added = 0;
  changed = 0;
  unchanged = 0;
  changes = 0;

  add(planned: readonly PlannedAircraft[]): void {
    for (const { revision, changes } of planned) {
      this.changes += changes.length;
      if (revision === 0) this.added += 1;
      else if (changes.length > 0) this.changed += 1;
      else this.unchanged += 1;
    }
  }
}

export function reportOf(findings: PlanFindings, tally: Tally, board: readonly BoardCount[]): ImportReport {
  const { files, bad, remarks, differences, newOperators, newTypes, keptTypes, uncatalogued } = findings;
  const { added, changed, unchanged, changes } = tally;
  return {
    files,
    aircraft: { added, changed, unchanged },
    changes,
    badCount: bad.length,
    bad: bad.slice(0, MOST_LISTED),
    differenceCount: differences.length,
    differences: differences.slice(0, MOST_LISTED),
    remarks: remarks.slice(0, MOST_LISTED),
    newOperators: newOperators.map(({ name }) => name),
    newTypes: [
      ...newTypes,
      ...keptTypes.filter(({ supersededBy }) => supersededBy === null).map(({ type }) => type),
    ].map(({ maker, name }) => `${maker} ${name}`),
    uncatalogued,
    board,
    problem: null,
  };
}

/** The report as aligned text, for a terminal. */
export function reportText(state: ImportState, report: ImportReport, progress: ImportProgress): string {
  const { added, changed, unchanged } = report.aircraft;
  const parts = [
    aligned([
      ['file', 'kind', 'rows', 'good', 'bad', 'nothing new'],
      ...report.files.map((file) => [
        file.name,
        file.kind ?? 'not known',
        String(file.rows),
        String(file.good),
        String(file.bad),
        String(file.unchanged),
      ]),
    ]),
    `Aircraft: ${added} new, ${changed} changed, ${unchanged} with nothing new; ${report.changes} entries in all.`,
    ...listed('New operators', report.newOperators),
    ...listed('New equipment types', report.newTypes),
    ...listed(
      'Not in the catalogue, taken as uncatalogued units',
      report.uncatalogued.map(({ type, units }) => `${type} (${units})`),
    ),
    ...(report.remarks.length === 0
      ? []
      : [`Remarks:\n${report.remarks.map(({ file, line, text }) => `  ${place(file, line)}  ${text}`).join('\n')}`]),
    ...(report.differences.length === 0
      ? []
      : [`Rows that say otherwise than what is recorded:\n${differenceRows(report.differences)}`]),
    ...(report.bad.length === 0 ? [] : [`Bad rows:\n${badRows(report.bad)}`]),
    ...(report.board.length === 0
      ? []
      : [
          `The board would say now, of these aircraft:\n${aligned([
            ['flight profile', 'yes', 'no', 'cannot tell'],
            ...report.board.map(({ profile, yes, no, cannotTell }) => [
              profile,
              String(yes),
              String(no),
              String(cannotTell),
            ]),
          ])}`,
        ]),
    outcome(state, report, progress),
  ];
  return parts.join('\n\n');
}

function outcome(state: ImportState, { badCount, differenceCount, problem }: ImportReport, progress: ImportProgress) {
  const { step, done, total } = progress;
  const partly = step === 'loading' && done > 0 && done < total;
  const loaded = partly
    ? `${done} of ${total} aircraft are in, each whole; run it again with the same files to go on.`
    : 'Nothing was loaded.';
  if (problem !== null) return `${loaded} ${problem.reason} ${problem.wayOut}`;
  if (state === 'interrupted') return `Stopped. ${loaded}`;
  if (state === 'loaded') return 'Loaded.';
  if (badCount > 0) return `${badCount} ${badCount === 1 ? 'row is' : 'rows are'} bad. Nothing was loaded.`;
  const differing = differenceCount > 0 ? ' Say with --differences take or keep what is to count.' : '';
  return `Dry run: every row is good, nothing was loaded. To load, give --load.${differing}`;
}

function differenceRows(rows: readonly Difference[]): string {
  return rows
    .map(({ file, line, registration, field, was, is, taken }) => {
      const word = taken === null ? 'not decided' : taken ? 'taken from the file' : 'left as recorded';
      return `  ${place(file, line)}  ${registration} ${field}: recorded "${was}", file "${is}" (${word})`;
    })
    .join('\n');
}

function listed(what: string, names: readonly string[]): string[] {
  return names.length === 0 ? [] : [`${what}: ${names.join(', ')}.`];
}

function badRows(rows: readonly BadRow[]): string {
  return rows
    .map(({ file, line, column, value, reason, wayOut }) => {
      const what = [column ?? '', value === null ? '' : `"${value}"`].filter((part) => part !== '').join(' ');
      return `  ${place(file, line)}  ${what}${what === '' ? '' : ': '}${reason} ${wayOut}`;
    })
    .join('\n');
}

function place(file: string, line: number | null): string {
  return line === null ? file : `${file}:${line}`;
}

/** Columns side by side; numbers to the right. */
function aligned(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => (row[at] ?? '').length)));
  const numeric = widths.map((_, at) => rows.slice(1).every((row) => /^\d+$/.test(row[at] ?? '')));
  return rows
    .map((row) =>
      row
        .map((cell, at) => (numeric[at] ? cell.padStart(widths[at] ?? 0) : cell.padEnd(widths[at] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
