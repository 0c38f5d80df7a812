import {
  codeWords,
  judgeAltimeterTest,
  judgeBonding,
  judgeCompass,
  judgeCorrespondence,
  type JudgedPoint,
  type JudgedReadings,
  judgeInterference,
  judgeStaticLeak,
  judgeTransponderTest,
  judgeVorCheck,
} from '@tallywing/rules';
import type { Spec } from '../../form/spec.js';
import { valueAt } from '../../form/tree.js';
import { readingsOf, specFor } from './follow.js';

const judges: Readonly<Record<string, (readings: never, day: string) => JudgedReadings>> = {
  altimeter: judgeAltimeterTest,
  transponder: judgeTransponderTest,
  vor: judgeVorCheck,
  staticLeak: judgeStaticLeak,
  correspondence: judgeCorrespondence,
  compass: (readings) => judgeCompass(readings),
  bonding: judgeBonding,
  interference: judgeInterference,
};

/** Judges the readings of an entry while it is being typed; null where its kind has none. Half-typed rows are left out. */
export function judgeStep(value: unknown): JudgedReadings | null {
  const group = readingsOf[String(valueAt(value, 'record.kind'))];
  const judge = group === undefined ? undefined : judges[group];
  const given = group === undefined ? undefined : valueAt(value, `record.readings.${group}`);
  if (!group || !judge || given === null || given === undefined) return null;
  const date = valueAt(value, 'record.done.date');
  return judge(
    wholeOnly(given, readingsSpec(group)) as never,
    typeof date === 'string' && date !== '' ? date : '9999-12-31',
  );
}

function readingsSpec(group: string): Spec {
  const names = ['record', 'readings', group];
  return names.reduce((spec, name) => {
    const found = spec.kind === 'object' ? spec.fields.find((field) => field.name === name)?.spec : undefined;
    if (!found) throw new Error(`Entries have no readings called ${group}.`);
    return found;
  }, specFor('record.add'));
}

const missing = Symbol('missing');

/** The value with what is not yet of its right form taken as not recorded. */
export function wholeOnly(value: unknown, spec: Spec): unknown {
  const whole = wholeOf(value, spec);
  return whole === missing ? null : whole;
}

function wholeOf(value: unknown, spec: Spec): unknown {
  if (value === null || value === undefined) return spec.nullable ? null : missing;
  switch (spec.kind) {
    case 'object': {
      const fields = spec.fields.map(({ name, spec: inner }) => [name, wholeOf(valueAt(value, name), inner)] as const);
      if (fields.some(([, inner]) => inner === missing)) return spec.nullable ? null : missing;
      return Object.fromEntries(fields);
    }
    case 'list':
      return (value as unknown[]).map((each) => wholeOf(each, spec.of)).filter((each) => each !== missing);
    case 'number':
    case 'hours':
      return typeof value === 'number' ? value : spec.nullable ? null : missing;
    default:
      return value === '' ? (spec.nullable ? null : missing) : value;
  }
}

/** 'Scale error at 2,000 ft'. */
export function pointWords(point: JudgedPoint): string {
  const what = codeWords(point.what);
  if (point.at === null) return what;
  return `${what} at ${typeof point.at === 'number' ? point.at.toLocaleString('en-US') : point.at}`;
}

export function readingWords(point: JudgedPoint): string {
  if (point.value === null) return 'not recorded';
  if (typeof point.value === 'boolean') return point.value ? 'yes' : 'no';
  return `${point.value.toLocaleString('en-US', { maximumFractionDigits: 3 })} ${point.unit ?? ''}`.trim();
}

export function limitWords(point: JudgedPoint): string {
  const { least, most, below, is } = point.limit;
  if (is !== undefined) return is ? 'must be yes' : 'must be no';
  const parts = [
    ...(least === undefined ? [] : [`at least ${least}`]),
    ...(most === undefined ? [] : [`at most ${most}`]),
    ...(below === undefined ? [] : [`less than ${below}`]),
  ];
  return parts.length === 0 ? '' : `${parts.join(', ')} ${point.unit ?? ''}`.trim();
}
