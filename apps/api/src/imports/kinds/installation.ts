import type { ChangeOf } from '@tallywing/rules';
import { touchedByJoint } from '@tallywing/rules';
import type { PlanContext } from '../file-kind.js';
import { fileKind, optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { vocabulary } from '../vocabulary.js';
import { documentNamed, laidOver, same, together } from './shared.js';

type Link = ChangeOf<'link.connect'>['link'];
type Antenna = ChangeOf<'antenna.fit'>['antenna'];
type Placard = ChangeOf<'placard.fit'>['placard'];
type Touched = ChangeOf<'link.connect'>['touched'][number];
type Supplement = ChangeOf<'supplement.set'>['supplement'];

const aircraft = required(form.registration, 'The aircraft.');

export const linksFile = fileKind({
  kind: 'links',
  says: 'One row for each joint between two units.',
  keySays: 'registration and both ends',
  columns: {
    registration: aircraft,
    from_unit: required(form.id, 'Unit that sends.'),
    from_port: required(
      form.text,
      "Its port, as the equipment type names it; for an uncatalogued unit the signal's name.",
    ),
    to_unit: required(form.id, 'Unit that receives.'),
    to_port: required(form.text, 'Its port.'),
    fitted_on: required(form.date, 'Day on which they were joined.'),
    cover: optional(
      form.word(vocabulary<NonNullable<Link['cover']>['by']>('link.connect', 'link.cover.by')),
      'What covers the joint, apart from the pair lists of the manuals.',
    ),
    cover_document: optional(form.text, 'Document of that cover.'),
    accepted_by: optional(form.text, 'Who accepted it as found.'),
    accepted_on: optional(form.date, 'When it was accepted as found.'),
    touched: optional(
      form.words(vocabulary<Touched>('link.connect', 'touched')),
      'What joining them touched, or nothing. Left empty it stays open, and the aircraft cannot be told ready, unless one of the units was fitted that day or the joint was accepted as found.',
    ),
  },
  key: (row) => `${row.registration} ${linkId(row)}`,
  plan: (row, context) => {
    const { dossier, remark } = context;
    together(row.accepted_by, row.accepted_on, 'accepted_on', 'Who accepted it and when');
    const known = dossier.configuration.links.find(
      (each) =>
        each.fromUnit === row.from_unit &&
        each.toUnit === row.to_unit &&
        each.fromPort === row.from_port &&
        each.toPort === row.to_port,
    );
    if (known) {
      if (row.cover !== null && row.cover !== known.cover?.by)
        remark(
          `${row.registration}: this joint is recorded with another cover. Part and join it on the aircraft's screen.`,
        );
      return [];
    }
    const acceptedBy =
      row.accepted_by === null || row.accepted_on === null ? null : { asOf: row.accepted_on, by: row.accepted_by };
    const link: Link = {
      id: linkId(row),
      fromUnit: row.from_unit,
      fromPort: row.from_port,
      toUnit: row.to_unit,
      toPort: row.to_port,
      cover:
        row.cover === null
          ? null
          : {
              by: row.cover,
              document: row.cover_document === null ? null : documentNamed(row.cover_document),
              acceptedBy,
            },
      fitted: null,
    };
    return [
      {
        kind: 'link.connect',
        link,
        performed: { date: row.fitted_on, at: null },
        touched: touchedOf(row, link, context),
      },
    ];
  },
  fields: {
    'link.fromUnit': 'from_unit',
    'link.fromPort': 'from_port',
    'link.toUnit': 'to_unit',
    'link.toPort': 'to_port',
    'performed.date': 'fitted_on',
    touched: 'touched',
  },
});

/** A joint touches at least what it carries; one that was accepted as found is no work. */
function touchedOf(
  row: { touched: readonly Touched[] | null; accepted_on: string | null },
  link: Link,
  { dossier, types }: PlanContext,
): Touched[] {
  const found = link.cover?.by === 'as-found' && row.accepted_on !== null;
  const stated = row.touched ?? [];
  if (found || stated.includes('nothing')) return [...stated];
  return [...new Set([...stated, ...touchedByJoint(link, dossier.configuration.units, types)])];
}

function linkId(row: { from_unit: string; from_port: string; to_unit: string; to_port: string }): string {
  const plain = (port: string) => port.replace(/[^A-Za-z0-9._-]+/g, '-');
  return `${row.from_unit}.${plain(row.from_port)}>${row.to_unit}.${plain(row.to_port)}`.slice(0, 80);
}

export const antennasFile = fileKind({
  kind: 'antennas',
  says: 'One row for each antenna.',
  keySays: 'registration and antenna',
  columns: {
    registration: aircraft,
    antenna: required(form.id, 'Short name of the antenna.'),
    antenna_kind: required(
      form.word(vocabulary<Antenna['kind']>('antenna.fit', 'antenna.kind')),
      'What it is made for.',
    ),
    serves: required(form.ids, 'Short names of the units that it serves.'),
    fitted_on: required(form.date, 'Day on which it was fitted.'),
    approved: optional(form.yesNo, 'Whether approved data cover it.'),
    touched: optional(
      form.words(vocabulary<Touched>('antenna.fit', 'touched')),
      'What fitting it touched, or nothing. Left empty it stays open, unless a unit that it serves was fitted that day.',
    ),
  },
  key: (row) => `${row.registration} ${row.antenna}`,
  plan: (row, { dossier }) => {
    const stored = dossier.configuration.antennas.find(({ id }) => id === row.antenna);
    const antenna: Antenna = {
      xIn: null,
      yIn: null,
      ...stored,
      id: row.antenna,
      kind: row.antenna_kind,
      units: row.serves,
      approved: row.approved ?? stored?.approved ?? null,
    };
    if (stored && same(stored, antenna)) return [];
    return [
      { kind: 'antenna.fit', antenna, performed: { date: row.fitted_on, at: null }, touched: [...(row.touched ?? [])] },
    ];
  },
  fields: {
    'antenna.units.0': 'serves',
    'antenna.units.1': 'serves',
    'antenna.units.2': 'serves',
    'performed.date': 'fitted_on',
  },
});

export const placardsFile = fileKind({
  kind: 'placards',
  says: 'One row for each placard.',
  keySays: 'registration and placard',
  columns: {
    registration: aircraft,
    placard: required(form.id, 'Short name of the placard.'),
    placard_kind: required(form.word(vocabulary<Placard['kind']>('placard.fit', 'placard.kind')), 'What it is about.'),
    placard_text: required(form.text, 'What it says.'),
    unit: optional(form.id, 'Unit that it is about.'),
    in_view: optional(form.yesNo, 'Whether the pilot sees it.'),
  },
  key: (row) => `${row.registration} ${row.placard}`,
  plan: (row, { dossier }) => {
    const stated: Placard = {
      id: row.placard,
      kind: row.placard_kind,
      unitId: row.unit,
      inView: row.in_view,
      text: row.placard_text,
    };
    const stored = dossier.configuration.placards.find(({ id }) => id === stated.id);
    const placard = laidOver(stored ?? stated, stated);
    return stored && same(stored, placard) ? [] : [{ kind: 'placard.fit', placard }];
  },
  fields: { 'placard.unitId': 'unit' },
});

export const supplementsFile = fileKind({
  kind: 'supplements',
  says: 'One row for each flight manual supplement.',
  keySays: 'registration and supplement',
  columns: {
    registration: aircraft,
    supplement: required(form.id, 'Short name of the supplement.'),
    supplement_title: required(form.text, 'Title of the document.'),
    units: required(form.ids, 'Short names of the units that it is about.'),
    revision: optional(form.text, 'Revision of the document.'),
    aboard: optional(form.yesNo, 'Whether it is aboard.'),
    current_data_required: optional(form.yesNo, 'Whether it asks for current navigation data.'),
    grants: optional(
      form.words(vocabulary<NonNullable<Supplement['grants']>[number]>('supplement.set', 'supplement.grants')),
      'What it allows.',
    ),
  },
  key: (row) => `${row.registration} ${row.supplement}`,
  plan: (row, { dossier }) => {
    const stated: Supplement = {
      id: row.supplement,
      units: row.units,
      document: { ...documentNamed(row.supplement_title), revision: row.revision },
      aboard: row.aboard,
      currentDataRequired: row.current_data_required,
      grants: row.grants,
    };
    const stored = dossier.configuration.supplements.find(({ id }) => id === stated.id);
    const supplement = laidOver(stored ?? stated, stated);
    return stored && same(stored, supplement) ? [] : [{ kind: 'supplement.set', supplement }];
  },
  fields: { 'supplement.units.0': 'units', 'supplement.units.1': 'units', 'supplement.units.2': 'units' },
});
