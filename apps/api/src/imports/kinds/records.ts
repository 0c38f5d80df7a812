import type { ChangeOf, Dossier } from '@tallywing/rules';
import type { Draft, PlanContext, RowOf } from '../file-kind.js';
import { fileKind, optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { recordContent, recordKey } from '../keys.js';
import { CellProblem } from '../problems.js';
import { vocabulary } from '../vocabulary.js';
import { agencyOf, documentNamed, laidOver, same, together } from './shared.js';

type Head = ChangeOf<'record.add'>['record'];
type Agency = NonNullable<Head['agency']>;
const listed = <W extends string>(field: string) => vocabulary<W>('record.add', `record.${field}`);

const columns = {
  registration: required(form.registration, 'The aircraft.'),
  record: required(form.word(listed<Head['kind']>('kind')), 'Kind of entry.'),
  done_on: required(form.date, 'Day on which the work was performed.'),
  done_at: optional(form.instant, 'Time at which it was performed, where two pieces of work of one day need an order.'),
  subjects: optional(
    form.ids,
    'What it is about: short names of units, static systems or directives; by default the aircraft.',
  ),
  hours: optional(form.hours, 'Time in service then, on the meter that stands for it.'),
  outcome: optional(form.word(listed<NonNullable<Head['outcome']>>('outcome')), 'What came out.'),
  evidence: optional(
    form.word(listed<Head['evidence']>('evidence')),
    'How well it is known; empty counts as reported. Only an entry that was seen makes it count.',
  ),
  book: optional(form.text, 'Book of the entry.'),
  page: optional(form.text, 'Page of the entry.'),
  signed_by: optional(form.text, 'Who did or signed it.'),
  signer_kind: optional(form.word(listed<Agency['kind']>('agency.kind')), 'What the signer is.'),
  signer_certificate: optional(form.text, 'Certificate number of the signer.'),
  signer_ratings: optional(
    form.words(listed<NonNullable<Agency['ratings']>[number]>('agency.ratings')),
    'Ratings held on that day.',
  ),
  second_signature: optional(form.text, 'Second person, for work that asks for one.'),
  instrument: optional(form.text, 'Serial number of the test set.'),
  calibrated_until: optional(form.date, 'Last day of its calibration.'),
  tested_to_ft: optional(form.wholeNumber, 'Altitude to which it was tested, feet.'),
  marked: optional(form.yesNo, 'Whether date and tested altitude are marked on the altimeter.'),
  place: optional(form.text, 'Place, for a VOR check.'),
  expires: optional(form.date, 'Day on which what was fitted expires, for a battery.'),
  document: optional(form.text, 'Document that the work followed.'),
  readings: optional(
    form.json,
    'Readings, as the JSON of the record: {"vor":{...}} and the like; what is left out was not read.',
  ),
  note: optional(form.note, 'Anything else.'),
} as const;
type Row = RowOf<typeof columns>;

export const recordsFile = fileKind({
  kind: 'records',
  says: 'One row for each entry of the maintenance record that still counts: inspections, tests, checks, releases.',
  keySays: 'registration, record, subjects and done_on',
  columns,
  key: (row) => `${row.registration} ${keyOf(row)}`,
  order: (row) => `${row.done_on} ${row.done_at ?? ''}`,
  plan: planRecord,
  fields: {
    'record.id': 'record',
    'record.done.date': 'done_on',
    'record.testedToFt': 'tested_to_ft',
    'record.meters.0.meter': 'hours',
    'record.subjects.0': 'subjects',
    'record.subjects.1': 'subjects',
    'record.subjects.2': 'subjects',
    'record.subjects': 'subjects',
    'record.readings': 'readings',
  },
});

function keyOf(row: Row): string {
  return recordKey(row.record, row.subjects ?? ['aircraft'], row.done_on);
}

function planRecord(row: Row, context: PlanContext): Draft[] {
  const key = keyOf(row);
  const stored = context.dossier.status.records.find(
    (each) => recordKey(each.kind, each.subjects, each.done.date) === key,
  );
  const stated = headOf(row, stored?.id ?? key, context.dossier);
  if (stored) {
    const record = laidOver(stored, row.evidence === null ? { ...stated, evidence: stored.evidence } : stated);
    return same(stored, record) ? [] : [{ kind: 'record.correct', record, reason: `Import of ${context.file}` }];
  }
  const earlier = context.recordedAs(key);
  if (earlier === null) return [{ kind: 'record.add', record: stated }];
  // A superseded entry has left the heads and stays in the history: it is not taken twice.
  if (earlier !== recordContent(stated))
    context.remark(
      `${row.registration}: this entry was recorded otherwise. Later ones took its place: it stays as it is.`,
    );
  return [];
}

function headOf(row: Row, id: string, dossier: Dossier): Head {
  together(row.book, row.page, 'page', 'Book and page');
  const meter = dossier.meters.timeInService;
  if (row.hours !== null && meter === null)
    throw new CellProblem(
      'It is not stated which meter stands for time in service.',
      'Add the meter to the file of meters, with time_in_service yes, or leave the hours empty.',
      'hours',
    );
  return {
    id,
    kind: row.record,
    subjects: row.subjects ?? ['aircraft'],
    done: { date: row.done_on, at: row.done_at },
    meters: row.hours === null || meter === null ? [] : [{ meter, value: row.hours }],
    outcome: row.outcome,
    enRoute: null,
    dueAt: null,
    evidence: row.evidence ?? 'reported',
    entry: row.book === null || row.page === null ? null : { book: row.book, page: row.page },
    agency: agencyOf(row.signed_by, row.signer_kind, 'signer_kind', {
      certificate: row.signer_certificate,
      ratings: row.signer_ratings,
    }),
    secondPerson: row.second_signature,
    instrument: row.instrument === null ? null : { serial: row.instrument, calibratedUntil: row.calibrated_until },
    document: row.document === null ? null : documentNamed(row.document),
    testedToFt: row.tested_to_ft,
    marked: row.marked,
    place: row.place,
    expires: row.expires,
    readings: readingsOf(row),
    note: row.note,
  };
}

const readingKinds = [
  'altimeter',
  'transponder',
  'vor',
  'staticLeak',
  'correspondence',
  'compass',
  'bonding',
  'interference',
] as const;

/** Left-out groups were not read; the core's schema checks the rest field by field. */
function readingsOf(row: Row): Head['readings'] {
  if (row.readings === null) return null;
  if (typeof row.readings !== 'object' || Array.isArray(row.readings))
    throw new CellProblem('Readings are an object by kind.', 'Write {"vor":{...}} and the like.', 'readings');
  const given = row.readings as Readonly<Record<string, unknown>>;
  const unknown = Object.keys(given).find((name) => !readingKinds.some((each) => each === name));
  if (unknown !== undefined)
    throw new CellProblem(`There are no readings called ${unknown}.`, `Use ${readingKinds.join(', ')}.`, 'readings');
  return Object.fromEntries(readingKinds.map((name) => [name, given[name] ?? null])) as Head['readings'];
}
