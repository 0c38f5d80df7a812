import { readNumber } from '../../form/numbers.js';

/** What a person has typed for one job, as it was typed. */
export interface Typed {
  readonly low: string;
  readonly typical: string;
  readonly high: string;
  readonly parts: string;
}

/** The table as a person is writing it. Jobs that are not in `jobs` keep the usual hours. */
export interface LabourDraft {
  /** Version of the table that it was begun on. */
  readonly basedOn: number;
  readonly hourly: string;
  readonly currency: string;
  readonly jobs: Readonly<Record<string, Typed>>;
}

interface Span {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

interface Table {
  readonly version: number;
  readonly hourly: number | null;
  readonly currency: string | null;
  readonly jobs: readonly {
    readonly job: string;
    readonly own: boolean;
    readonly hours: Span;
    readonly parts: number | null;
  }[];
}

export function draftOf(table: Table): LabourDraft {
  return {
    basedOn: table.version,
    hourly: textOf(table.hourly),
    currency: table.currency ?? '',
    jobs: Object.fromEntries(table.jobs.filter((each) => each.own).map((each) => [each.job, typedOf(each)])),
  };
}

export function typedOf({ hours, parts }: { readonly hours: Span; readonly parts: number | null }): Typed {
  return {
    low: textOf(hours.low),
    typical: textOf(hours.typical),
    high: textOf(hours.high),
    parts: textOf(parts),
  };
}

/** Whether saving would change anything. */
export function differs(draft: LabourDraft, table: Table): boolean {
  const plain = ({ hourly, currency, jobs }: LabourDraft) =>
    JSON.stringify([hourly.trim(), currency.trim(), Object.entries(jobs).sort(([a], [b]) => (a < b ? -1 : 1))]);
  return plain(draft) !== plain(draftOf(table));
}

/** What is wrong, by field: `hourly`, `currency`, `vor-check.low`. */
export function wrongIn(draft: LabourDraft): ReadonlyMap<string, string> {
  const wrong = new Map<string, string>();
  const hourly = readNumber(draft.hourly);
  if (typeof hourly === 'string' || (hourly !== null && hourly <= 0))
    wrong.set('hourly', 'A price above 0, or nothing.');
  if (hourly !== null && draft.currency.trim() === '') wrong.set('currency', 'A price needs its currency.');
  if (draft.currency.trim().length > 8) wrong.set('currency', 'At most 8 characters.');
  for (const [job, typed] of Object.entries(draft.jobs)) {
    const [low, typical, high] = [typed.low, typed.typical, typed.high].map(readNumber);
    for (const [name, value] of Object.entries({ low, typical, high }))
      if (typeof value !== 'number' || value < 0 || value > 10_000) wrong.set(`${job}.${name}`, 'Hours, 0 to 10,000.');
    if (isNumber(low) && isNumber(typical) && low > typical) wrong.set(`${job}.low`, 'Not more than typical.');
    if (isNumber(typical) && isNumber(high) && typical > high) wrong.set(`${job}.high`, 'Not less than typical.');
    const parts = readNumber(typed.parts);
    if (typeof parts === 'string' || (parts !== null && parts < 0)) wrong.set(`${job}.parts`, 'A price, or nothing.');
  }
  return wrong;
}

/** The draft as the server takes it. Only for a draft in which nothing is wrong. */
export function inputOf(draft: LabourDraft) {
  return {
    expectedVersion: draft.basedOn,
    hourly: numberOf(draft.hourly),
    currency: draft.currency.trim() || null,
    jobs: Object.entries(draft.jobs).map(([job, { low, typical, high, parts }]) => ({
      job,
      low: numberOf(low) ?? 0,
      typical: numberOf(typical) ?? 0,
      high: numberOf(high) ?? 0,
      parts: numberOf(parts),
    })),
  };
}

function numberOf(text: string): number | null {
  const value = readNumber(text);
  return typeof value === 'number' ? value : null;
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number';
}

function textOf(value: number | null): string {
  return value === null ? '' : String(value);
}
