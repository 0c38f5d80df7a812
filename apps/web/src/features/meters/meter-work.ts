import { hoursText, readHours } from '../../trade/hours.js';
import { instantAt } from '../../trade/time.js';
import type { RecordInput, SheetMeter, SheetRow } from './query.js';

/** What can be done to a meter beside reading it. */
export type WorkKind = 'replace' | 'correct' | 'define' | 'use' | 'another';

/** What a person typed about one meter; local times of the base. */
export interface WorkForm {
  readonly oldDial: string;
  readonly newDial: string;
  readonly dial: string;
  readonly at: string;
  readonly reason: string;
  readonly name: string;
  readonly kind: SheetMeter['kind'];
  /** How far it moves in one flight hour. */
  readonly pace: string;
  readonly standsFor: boolean;
  readonly perMonth: string;
  readonly goodForDays: string;
}

export interface JudgedWork {
  readonly problems: Readonly<Partial<Record<keyof WorkForm, string>>>;
  /** Null while something is missing or wrong. */
  readonly change: RecordInput['changes'][number] | null;
}

export const meterKinds: readonly SheetMeter['kind'][] = [
  'tachometer',
  'hour-meter',
  'airframe',
  'flight-log',
  'landings',
  'engine',
  'propeller',
  'elt-transmitter',
];

/** The form as it opens: what is known of the meter, or of a new one. */
export function startWork(row: SheetRow, meter: SheetMeter | null, nowLocal: string): WorkForm {
  return {
    oldDial: '',
    newDial: '0',
    dial: '',
    at: nowLocal,
    reason: '',
    name: meter?.name ?? '',
    kind: meter?.kind ?? 'tachometer',
    pace: String(meter?.perFlightHour ?? 1),
    standsFor: meter?.timeInService ?? !row.meters.some(({ timeInService }) => timeInService),
    perMonth: row.hoursPerMonth === null ? '' : String(row.hoursPerMonth),
    goodForDays: row.ownReadingAge === null ? '' : String(row.ownReadingAge),
  };
}

/** What is wrong with the form, and the change that it records. */
export function judgeWork(
  work: WorkKind,
  form: WorkForm,
  {
    row,
    meter,
    now,
    by,
  }: { readonly row: SheetRow; readonly meter: SheetMeter | null; readonly now: string; readonly by: string },
): JudgedWork {
  const problems: Partial<Record<keyof WorkForm, string>> = {};
  const wrong = (field: keyof WorkForm, says: string): undefined => {
    problems[field] = says;
    return undefined;
  };
  const hours = (field: 'oldDial' | 'newDial' | 'dial'): number | undefined => {
    const read = readHours(form[field].replace(',', '.'));
    return typeof read === 'number' ? read : wrong(field, 'Type hours, with at most two decimals: 1250.3');
  };
  const moment = (): string | undefined => {
    const at = instantAt(form.at, row.aircraft.base.zone);
    if (at === null) return wrong('at', 'Give the day and the time.');
    return at > now ? wrong('at', 'This time has not come yet.') : at;
  };
  const done = (change: object | null): JudgedWork => ({
    problems,
    change: Object.keys(problems).length > 0 || change === null ? null : (change as JudgedWork['change']),
  });
  const last = meter === null || meter.hours === null ? null : hundredths(meter.hours - meter.offset);

  if (work === 'use') {
    const perMonth = form.perMonth.trim() === '' ? null : readHours(form.perMonth.replace(',', '.'));
    if (typeof perMonth === 'string') wrong('perMonth', 'Type hours, or leave it empty if nobody knows.');
    const days = form.goodForDays.trim() === '' ? null : Number(form.goodForDays);
    if (days !== null && !(Number.isInteger(days) && days >= 1 && days <= 3660))
      wrong('goodForDays', 'Type days, 1 to 3660, or leave it empty: then the age of the house counts.');
    return done({ utilisationSet: { utilisation: { perMonth, readingGoodForDays: days } } });
  }
  if (work === 'define' || work === 'another') {
    const known = work === 'another' ? null : meter;
    if (form.name.trim() === '') wrong('name', 'Give it the name that stands on the aircraft.');
    const pace = Number(form.pace.replace(',', '.'));
    if (form.pace.trim() === '' || !(pace >= 0 && pace <= 5))
      wrong('pace', 'Type how far it moves in one flight hour, 0 to 5: 1 is the same pace.');
    const definition = {
      id: known?.id ?? freshId(form.name, row),
      name: form.name.trim(),
      kind: spelled(form.kind),
      perFlightHour: Math.round(pace * 1000),
      offset: known === null ? 0 : hundredths(known.offset),
    };
    return done({ meterDefine: { definition, standsForTimeInService: form.standsFor } });
  }
  if (meter === null) return done(null);
  const at = moment();
  if (work === 'replace') {
    const [oldDial, newDial] = [hours('oldDial'), hours('newDial')];
    if (oldDial !== undefined && last !== null && oldDial < last)
      wrong('oldDial', `It already stood at ${hoursText(last)}. If that was misread, correct the reading first.`);
    return done({ meterReplace: { meter: meter.id, oldDial, newDial, at, by } });
  }
  const dial = hours('dial');
  if (form.reason.trim() === '') wrong('reason', 'Say why; it stands with the correction.');
  const value = dial === undefined ? undefined : dial + hundredths(meter.offset);
  if (value !== undefined && value < 0)
    wrong('dial', 'With what was carried over from the old dial this is below zero.');
  return done({ meterCorrect: { meter: meter.id, value, asOf: at, by, reason: form.reason.trim() } });
}

function hundredths(hours: number): number {
  return Math.round(hours * 100);
}

function spelled(kind: string): string {
  return kind.toUpperCase().replace(/-/g, '_');
}

/** An id made of the name, that no other meter of the aircraft has. */
function freshId(name: string, row: SheetRow): string {
  const plain =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'meter';
  const taken = new Set(row.meters.map(({ id }) => id));
  let id = plain;
  for (let n = 2; taken.has(id); n += 1) id = `${plain}-${n}`;
  return id;
}
