import type { BoardCount } from './board.js';
import type { FileSummary, Plan } from './plan.js';
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
  readonly remarks: readonly Remark[];
  readonly newOperators: readonly string[];
  readonly newTypes: readonly string[];
  readonly board: readonly BoardCount[];
  /** Why nothing was loaded although no row is bad; null otherwise. */
  readonly problem: { readonly reason: string; readonly wayOut: string } | null;
}

export interface ImportProgress {
  readonly step: string;
  readonly done: number;
  readonly total: number;
}

export function reportOf(plan: Plan, board: readonly BoardCount[]): ImportReport {
  return {
    files: plan.files,
    aircraft: {
      added: plan.aircraft.filter(({ revision }) => revision === 0).length,
      changed: plan.aircraft.filter(({ revision, changes }) => revision > 0 && changes.length > 0).length,
      unchanged: plan.aircraft.filter(({ revision, changes }) => revision > 0 && changes.length === 0).length,
    },
    changes: plan.aircraft.reduce((sum, { changes }) => sum + changes.length, 0),
    badCount: plan.bad.length,
    bad: plan.bad.slice(0, MOST_LISTED),
    remarks: plan.remarks.slice(0, MOST_LISTED),
    newOperators: plan.newOperators.map(({ name }) => name),
    newTypes: plan.newTypes.map(({ maker, name }) => `${maker} ${name}`),
    board,
    problem: null,
  };
}

/** The report as aligned text, for a terminal. */
export function reportText(state: ImportState, report: ImportReport): string {
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
    ...(report.remarks.length === 0
      ? []
      : [`Remarks:\n${report.remarks.map(({ file, line, text }) => `  ${place(file, line)}  ${text}`).join('\n')}`]),
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
    `${outcome(state, report)}`,
  ];
  return parts.join('\n\n');
}

function outcome(state: ImportState, { badCount, problem }: ImportReport): string {
  if (problem !== null) return `Nothing was loaded. ${problem.reason} ${problem.wayOut}`;
  if (state === 'loaded') return 'Loaded.';
  if (badCount > 0) return `${badCount} ${badCount === 1 ? 'row is' : 'rows are'} bad. Nothing was loaded.`;
  return 'Dry run: every row is good, nothing was loaded. To load, give --load.';
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
