import type { ChangeOf } from '@tallywing/rules';
import type { Draft } from '../file-kind.js';
import { fileKind, optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { defectKey, recordKey } from '../keys.js';
import { vocabulary } from '../vocabulary.js';
import { agencyOf, blankHead, laidOver, same, together } from './shared.js';

type Item = ChangeOf<'equipment.state'>['items'][number];
type Load = ChangeOf<'database.load'>['load'];
type Defect = ChangeOf<'defect.raise'>['defect'];
type Head = ChangeOf<'record.add'>['record'];
type Agency = NonNullable<Head['agency']>;
type Directive = ChangeOf<'directive.set'>['directive'];

const aircraft = required(form.registration, 'The aircraft.');

export const equipmentFile = fileKind({
  kind: 'equipment',
  says: 'One row for each item that 14 CFR 91.205 asks about.',
  keySays: 'registration and item',
  columns: {
    registration: aircraft,
    item: required(form.word(vocabulary<Item['item']>('equipment.state', 'items.item')), 'The item.'),
    state: required(form.word(vocabulary<Item['state']>('equipment.state', 'items.state')), 'Whether it is there.'),
    unit: optional(form.id, 'Unit that does it, where it is one of the units.'),
    seen_on: optional(form.date, 'When somebody looked.'),
    seen_by: optional(form.text, 'Who looked.'),
  },
  key: (row) => `${row.registration} ${row.item}`,
  plan: (row, { dossier }) => {
    together(row.seen_on, row.seen_by, 'seen_by', 'Who looked and when');
    const seen = row.seen_on === null || row.seen_by === null ? null : { asOf: row.seen_on, by: row.seen_by };
    const stated: Item = { item: row.item, state: row.state, unitId: row.unit, seen };
    const stored = dossier.configuration.equipment.find((each) => each.item === stated.item);
    const item = laidOver(stored ?? stated, stated);
    return stored && same(stored, item) ? [] : [{ kind: 'equipment.state', items: [item] }];
  },
  fields: { 'items.0.unitId': 'unit' },
});

export const loadsFile = fileKind({
  kind: 'loads',
  says: 'One row for each database that a unit holds.',
  keySays: 'registration, unit, database and slot',
  columns: {
    registration: aircraft,
    unit: required(form.id, 'The unit.'),
    database: required(form.word(vocabulary<Load['database']>('database.load', 'load.database')), 'Kind of data.'),
    loaded_on: required(form.date, 'Day on which it was loaded.'),
    slot: optional(
      form.word(vocabulary<Load['slot']>('database.load', 'load.slot')),
      'The cycle in use or the next one; by default this.',
    ),
    cycle: optional(form.text, 'Number of the cycle, four digits.'),
    effective: optional(form.instant, 'From when it holds, as the provider prints it.'),
    expires: optional(form.instant, 'Until when it holds, as the provider prints it.'),
    coverage: optional(form.text, 'Regions that the data cover, as the provider calls them; | between them.'),
    from_flight_deck: optional(
      form.yesNo,
      'Whether it was loaded from the flight deck, without taking the unit apart and without tools; if not, it was maintenance and wants a release.',
    ),
  },
  key: (row) => `${row.registration} ${row.unit} ${row.database} ${row.slot ?? 'this'}`,
  order: (row) => row.loaded_on,
  plan: (row, { dossier }) => {
    const stated: Load = {
      unitId: row.unit,
      database: row.database,
      slot: row.slot ?? 'this',
      cycle: row.cycle,
      effective: row.effective,
      expires: row.expires,
      loaded: { date: row.loaded_on, at: null },
      fromFlightDeck: row.from_flight_deck,
      coverage: row.coverage === null ? null : row.coverage.split('|').map((each) => each.trim()),
      notices: [],
    };
    const stored = dossier.status.loads.find(
      (each) => each.unitId === stated.unitId && each.database === stated.database && each.slot === stated.slot,
    );
    // What was loaded later stays; an older row says nothing new.
    if (stored && stored.loaded.date > row.loaded_on) return [];
    const sameLoad =
      stored !== undefined &&
      (stored.loaded.date === row.loaded_on ||
        same([stored.cycle, stored.effective, stored.expires], [stated.cycle, stated.effective, stated.expires]));
    const load = sameLoad ? laidOver(stored, { ...stated, loaded: stored.loaded }) : stated;
    return stored && same(stored, load) ? [] : [{ kind: 'database.load', load }];
  },
  fields: {
    'load.unitId': 'unit',
    'load.cycle': 'cycle',
    'load.expires': 'expires',
    'load.loaded.date': 'loaded_on',
  },
});

export const defectsFile = fileKind({
  kind: 'defects',
  says: 'One row for each defect that is open. A deferral is recorded on the screen of the aircraft.',
  keySays: 'registration, subject and raised_on',
  columns: {
    registration: aircraft,
    defect: required(form.word(vocabulary<Defect['kind']>('defect.raise', 'defect.kind')), 'Kind of defect.'),
    subject: required(form.id, 'Unit, item of 91.205, or aircraft.'),
    raised_on: required(form.date, 'Day on which it was found.'),
    description: required(form.note, 'What is wrong.'),
    decided_by: optional(form.text, 'Who decided what kind of defect it is; empty: nobody yet.'),
    decider_kind: optional(
      form.word(vocabulary<Agency['kind']>('record.add', 'record.agency.kind')),
      'What that person is.',
    ),
    decider_certificate: optional(form.text, 'Certificate number of that person.'),
    decider_ratings: optional(
      form.words(vocabulary<NonNullable<Agency['ratings']>[number]>('record.add', 'record.agency.ratings')),
      'Ratings of that person.',
    ),
  },
  key: (row) => `${row.registration} ${defectKey(row.subject, row.raised_on)}`,
  plan: (row, { dossier, recordedAs, remark }) => {
    const id = defectKey(row.subject, row.raised_on);
    const known = dossier.status.defects.find(
      (each) => each.subject === row.subject && each.raised.date === row.raised_on,
    );
    if (known && known.text !== row.description)
      remark(`${row.registration}: a defect of ${row.subject} of this day is recorded with other words, which stay.`);
    if (known || recordedAs(id) !== null) return [];
    const defect: Defect = {
      id,
      kind: row.defect,
      subject: row.subject,
      text: row.description,
      raised: { date: row.raised_on, at: null },
      decidedBy: agencyOf(row.decided_by, row.decider_kind, 'decider_kind', {
        certificate: row.decider_certificate,
        ratings: row.decider_ratings,
      }),
      deferral: null,
    };
    return [{ kind: 'defect.raise', defect }];
  },
  fields: { 'defect.subject': 'subject', 'defect.raised.date': 'raised_on', 'defect.id': 'subject' },
});

export const directivesFile = fileKind({
  kind: 'directives',
  says: 'One row for each airworthiness directive that was looked at for the aircraft.',
  keySays: 'registration, directive and subject',
  columns: {
    registration: aircraft,
    directive: required(form.text, 'Number of the directive.'),
    directive_state: required(
      form.word(vocabulary<Directive['state']>('directive.set', 'directive.state')),
      'Where it stands.',
    ),
    subject: optional(form.id, 'Unit that it is about; by default the aircraft.'),
    reason: optional(form.note, 'Why it does not apply.'),
    method: optional(form.text, 'How it was complied with.'),
    complied_on: optional(form.date, 'Day of the entry that shows compliance.'),
    evidence: optional(
      form.word(vocabulary<Head['evidence']>('record.add', 'record.evidence')),
      'How well that entry is known; empty counts as reported. Only an entry that was seen makes it count.',
    ),
    outcome: optional(
      form.word(vocabulary<NonNullable<Head['outcome']>>('record.add', 'record.outcome')),
      'What that entry says came out; without it nobody can tell.',
    ),
    book: optional(form.text, 'Book of that entry.'),
    page: optional(form.text, 'Page of that entry.'),
    signed_by: optional(form.text, 'Who signed that entry; without it nobody can tell.'),
    signer_kind: optional(
      form.word(vocabulary<Agency['kind']>('record.add', 'record.agency.kind')),
      'What the signer is.',
    ),
    signer_certificate: optional(form.text, 'Certificate number of the signer.'),
    signer_ratings: optional(
      form.words(vocabulary<NonNullable<Agency['ratings']>[number]>('record.add', 'record.agency.ratings')),
      'Ratings held on that day.',
    ),
    part_number: optional(form.text, 'Part number that it was looked up for or done on.'),
    serial: optional(form.text, 'Serial number that it was looked up for or done on.'),
    recurs: optional(
      form.yesNo,
      'Whether it is done again and again; yes where an interval or a next due point is given.',
    ),
    every_months: optional(form.wholeNumber, 'Calendar months between two times, counted from its entries.'),
    every_hours: optional(form.hours, 'Hours between two times, counted from its entries; the first of both decides.'),
    every_meter: optional(form.id, 'Meter of those hours.'),
    next_date: optional(form.date, 'Next due day of a recurring one.'),
    next_meter: optional(form.id, 'Meter of its next due hours.'),
    next_hours: optional(form.hours, 'Next due hours of a recurring one.'),
  },
  key: (row) => `${row.registration} ${directiveId(row)}`,
  plan: (row, { dossier, recordedAs }) => {
    together(row.next_meter, row.next_hours, 'next_hours', 'The meter and its hours');
    together(row.every_meter, row.every_hours, 'every_hours', 'The meter and its hours');
    const pointStated = row.next_date !== null || row.next_hours !== null;
    const interval = intervalOf(row);
    const by = row.next_hours === null ? 'date' : row.next_date === null ? 'meter' : 'first';
    const stated: Directive = {
      id: directiveId(row),
      number: row.directive,
      subject: row.subject ?? 'aircraft',
      partNumber: row.part_number,
      serial: row.serial,
      state: row.directive_state,
      reason: row.reason,
      method: row.method,
      recurs: row.recurs ?? (interval !== null || (pointStated && row.directive_state === 'complied') ? true : null),
      interval,
      nextDue: pointStated ? { by, date: row.next_date, meter: row.next_meter, at: row.next_hours } : null,
      recordId: row.complied_on === null ? null : complianceId(row, row.complied_on),
    };
    const stored = dossier.status.directives.find(({ id }) => id === stated.id);
    const directive = laidOver(stored ?? stated, stated);
    const set: Draft[] = stored && same(stored, directive) ? [] : [{ kind: 'directive.set', directive }];
    if (row.complied_on === null || recordedAs(complianceId(row, row.complied_on)) !== null) return set;
    const known = dossier.status.records.some(({ id }) => id === directive.recordId);
    return known ? set : [...set, { kind: 'record.add', record: complianceOf(row, directive.id, row.complied_on) }];
  },
  fields: {
    'directive.subject': 'subject',
    'directive.reason': 'reason',
    'directive.recurs': 'recurs',
    'directive.interval.parts': 'every_hours',
    'directive.nextDue.meter': 'next_meter',
    'record.done.date': 'complied_on',
  },
});

/** Calendar months, hours, or the first of both, counted from when it was done. */
function intervalOf(row: {
  every_months: number | null;
  every_hours: number | null;
  every_meter: string | null;
}): Directive['interval'] {
  const months =
    row.every_months === null
      ? []
      : [{ kind: 'calendar-months', count: row.every_months, meter: null, tolerance: null } as const];
  const hours =
    row.every_hours === null
      ? []
      : [{ kind: 'hours', count: row.every_hours, meter: row.every_meter, tolerance: null } as const];
  const parts = [...months, ...hours];
  return parts.length === 0 ? null : { parts, combine: 'first', countFrom: 'done', toleranceFor: 'none' };
}

function directiveId(row: { directive: string; subject: string | null }): string {
  const plain = row.directive.toLowerCase().replace(/[^a-z0-9._-]+/g, '-');
  return `ad:${plain}:${row.subject ?? 'aircraft'}`.slice(0, 80);
}

function complianceId(row: { directive: string; subject: string | null }, date: string): string {
  return recordKey('directive-compliance', [directiveId(row)], date);
}

function complianceOf(
  row: {
    directive: string;
    subject: string | null;
    evidence: Head['evidence'] | null;
    outcome: Head['outcome'];
    book: string | null;
    page: string | null;
    signed_by: string | null;
    signer_kind: Agency['kind'] | null;
    signer_certificate: string | null;
    signer_ratings: Agency['ratings'];
  },
  directiveId: string,
  date: string,
): Head {
  together(row.book, row.page, 'page', 'Book and page');
  return {
    ...blankHead,
    id: complianceId(row, date),
    kind: 'directive-compliance',
    subjects: [directiveId],
    done: { date, at: null },
    evidence: row.evidence ?? 'reported',
    outcome: row.outcome,
    entry: row.book === null || row.page === null ? null : { book: row.book, page: row.page },
    agency: agencyOf(row.signed_by, row.signer_kind, 'signer_kind', {
      certificate: row.signer_certificate,
      ratings: row.signer_ratings,
    }),
  };
}
