import type { ChangeOf } from '@tallywing/rules';
import type { Draft, PlanContext, RowOf } from '../file-kind.js';
import { fileKind, optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { readingContent, readingKey } from '../keys.js';
import { vocabulary } from '../vocabulary.js';
import { need } from './shared.js';

type Definition = ChangeOf<'meter.define'>['definition'];

const columns = {
  registration: required(form.registration, 'The aircraft.'),
  meter: required(form.id, 'Short name of the meter.'),
  dial: required(form.hours, 'What the dial shows, decimal hours.'),
  read_at: required(form.instant, 'When it was read.'),
  read_by: required(form.text, 'Who read it.'),
  meter_kind: optional(
    form.word(vocabulary<Definition['kind']>('meter.define', 'definition.kind')),
    'Kind of meter; needed the first time that the meter is named.',
  ),
  meter_name: optional(form.text, 'What it is called; by default its short name.'),
  time_in_service: optional(form.yesNo, 'Whether it stands for time in service (wheels off to touchdown).'),
  pace: optional(form.pace, 'Part of a flight hour by which it moves; by default 1.'),
} as const;
type Row = RowOf<typeof columns>;

export const metersFile = fileKind({
  kind: 'meters',
  says: 'One row for each reading of a meter. The first row of a meter also says what kind of meter it is.',
  keySays: 'registration, meter and read_at',
  columns,
  key: (row) => `${row.registration} ${readingKey(row.meter, row.read_at)}`,
  order: (row) => row.read_at,
  plan: (row, context) => [...defined(row, context), ...read(row, context)],
  fields: { dial: 'dial', asOf: 'read_at', meter: 'meter', by: 'read_by' },
});

function defined(row: Row, { dossier }: PlanContext): Draft[] {
  const stored = dossier.meters.definitions.find(({ id }) => id === row.meter);
  const stands = dossier.meters.timeInService === row.meter;
  if (stored && (stands || row.time_in_service !== true)) return [];
  const kind = need(
    row.meter_kind ?? stored?.kind ?? null,
    'meter_kind',
    `The meter ${row.meter} is not known yet.`,
    'Say what kind of meter it is.',
  );
  const definition = stored ?? {
    id: row.meter,
    name: row.meter_name ?? row.meter,
    kind,
    perFlightHour: row.pace ?? 1000,
    offset: 0,
  };
  return [{ kind: 'meter.define', definition, standsForTimeInService: row.time_in_service ?? false }];
}

function read(row: Row, { dossier, file, recordedAs, remark }: PlanContext): Draft[] {
  const last = dossier.meters.readings[row.meter];
  const offset = dossier.meters.definitions.find(({ id }) => id === row.meter)?.offset ?? 0;
  if (last?.asOf === row.read_at) {
    const value = row.dial + offset;
    const reason = `Import of ${file}`;
    if (last.value === value) return [];
    return [{ kind: 'meter.correct', meter: row.meter, value, asOf: row.read_at, by: row.read_by, reason }];
  }
  const earlier = recordedAs(readingKey(row.meter, row.read_at));
  if (earlier !== null) {
    if (earlier !== readingContent(row.dial) && earlier !== '')
      remark(
        `${row.registration} ${row.meter} was recorded otherwise at this time. Later readings stand on it: it stays as it is.`,
      );
    return [];
  }
  return [{ kind: 'meter.read', meter: row.meter, dial: row.dial, asOf: row.read_at, by: row.read_by }];
}
