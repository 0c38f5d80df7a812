import type { ChangeOf, EquipmentType } from '@tallywing/rules';
import { touchedBy } from '@tallywing/rules';
import type { Draft, PlanContext, RowOf } from '../file-kind.js';
import { fileKind, optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { vocabulary } from '../vocabulary.js';
import { documentNamed, need, over, same, together } from './shared.js';

type Unit = ChangeOf<'unit.install'>['unit'];
type Approval = NonNullable<Unit['approval']>;
const listed = <W extends string>(field: string) => vocabulary<W>('unit.install', field);

const columns = {
  registration: required(form.registration, 'The aircraft.'),
  unit: required(
    form.id,
    'Short name of the unit on this aircraft; it is the same unit again by it, or by its serial number.',
  ),
  name: optional(form.text, 'What it is called; by default the name of its equipment type.'),
  type: optional(form.text, 'Equipment type of the catalogue: name, part number or family.'),
  functions: optional(
    form.words(listed<Unit['functions'][number]>('unit.functions')),
    'What it does, where the type is not in the catalogue: that makes it an uncatalogued unit. Empty: nobody knows yet.',
  ),
  fitted_on: required(form.date, 'Day on which it was fitted.'),
  serial: optional(form.text, 'Serial number.'),
  place: optional(form.word(listed<NonNullable<Unit['place']>>('unit.place')), 'Where it sits.'),
  offset_in: optional(form.decimalNumber, "Distance from the centre of the pilot's view, inches."),
  software: optional(form.text, 'Software version.'),
  manufactured: optional(form.date, 'Day of manufacture of the unit.'),
  mass_lb: optional(form.decimalNumber, 'Mass, pounds.'),
  arm_in: optional(form.decimalNumber, 'Arm, inches.'),
  approval: optional(form.word(listed<Approval['basis']>('unit.approval.basis')), 'Kind of approved data.'),
  approval_document: optional(form.text, 'The approved data: form, certificate, drawing.'),
  approval_revision: optional(form.text, 'Revision of the approved data, or of its model list.'),
  approved_on: optional(form.date, 'Day of the approved data.'),
  released_on: optional(form.date, 'Day of the release after the installation.'),
  permission: optional(form.yesNo, 'Written permission of the holder seen.'),
  model_listed: optional(form.yesNo, 'Exact model found on the list in force.'),
  grants: optional(
    form.words(listed<NonNullable<Approval['grants']>[number]>('unit.approval.grants')),
    'What the papers let this installation be used for.',
  ),
  accepted_by: optional(form.text, 'Who accepted it as found.'),
  accepted_on: optional(form.date, 'When it was accepted as found.'),
  notes: optional(form.note, 'Anything else.'),
} as const;
type Row = RowOf<typeof columns>;

export const unitsFile = fileKind({
  kind: 'units',
  says: 'One row for each unit that is fitted. Fitting a unit calls for entries and tests of its day or later: add them to the file of records.',
  keySays: 'registration and unit',
  columns,
  key: (row) => `${row.registration} ${row.unit}`,
  order: (row) => row.fitted_on,
  plan: planUnit,
  fields: {
    'unit.id': 'unit',
    'unit.name': 'name',
    'unit.serial': 'serial',
    'unit.typeId': 'type',
    'unit.functions': 'functions',
    'unit.manufactured': 'manufactured',
    'unit.approval.approvedOn': 'approved_on',
    'unit.massLb': 'mass_lb',
    'unit.offsetIn': 'offset_in',
    'performed.date': 'fitted_on',
    touched: 'functions',
  },
});

function planUnit(row: Row, context: PlanContext): Draft[] {
  const type = row.type === null ? null : context.typeNamed(row.type);
  const stored = storedUnit(row, type, context);
  if (row.type !== null && type === null && stored === null) {
    context.uncatalogued(row.type);
    context.remark(
      `${row.registration} ${row.unit}: ${row.type} is not in the catalogue; taken as an uncatalogued unit${
        row.functions === null ? ', and nobody has stated what it does' : ''
      }. What hangs on it cannot be told until it is tied to a type.`,
    );
  }
  const stated = {
    name: row.name ?? type?.name ?? row.type,
    typeId: type?.id ?? null,
    functions: type !== null ? [] : stored !== null && stored.typeId !== null ? null : row.functions,
    serial: stored !== null && alike(stored.serial, row.serial ?? '') ? stored.serial : row.serial,
    place: row.place,
    software: row.software,
    offsetIn: row.offset_in,
    manufactured: row.manufactured,
    massLb: row.mass_lb ?? type?.massLb ?? null,
    armIn: row.arm_in,
    notes: row.notes,
    approval: approvalOf(row, stored?.approval ?? null),
  };
  if (stored !== null) {
    const unit = over(stored, stated);
    if (same(unit, stored)) return [];
    return [{ kind: 'unit.amend', unit, sameUnit: null, reason: `Import of ${context.file}` }];
  }
  const name = need(stated.name, 'name', 'The unit has neither a name nor a type.', 'Give one of the two.');
  const unit = { ...blankUnit(row.unit), ...stated, name, functions: stated.functions ?? unknownFunctions };
  return [
    {
      kind: 'unit.install',
      unit,
      performed: { date: row.fitted_on, at: null },
      touched: touchedBy(type?.functions ?? unit.functions),
      mass: null,
    },
  ];
}

/** It does something, and nobody has said what: no capability hangs on it. */
const unknownFunctions: Unit['functions'] = ['other'];

/** The same unit by its short name, else by its serial number, else, if a person says so, by type and place. */
function storedUnit(row: Row, type: EquipmentType | null, context: PlanContext): Unit | null {
  const { units } = context.dossier.configuration;
  const own = units.find((each) => each.id === row.unit);
  if (own) return own;
  const name = (row.name ?? type?.name ?? row.type ?? '').toLowerCase();
  const others = units.filter(
    (each) =>
      !context.named.has(each.id) &&
      (type !== null && each.typeId !== null ? each.typeId === type.id : each.name.toLowerCase() === name),
  );
  const byNumber = others.filter((each) => row.serial !== null && alike(each.serial, row.serial));
  const byPlace = others.filter(
    (each) => row.place !== null && each.place === row.place && (row.serial === null || each.serial === null),
  );
  const [found, another] = byNumber.length > 0 ? byNumber : byPlace;
  if (!found || another) return null;
  // Two of one kind side by side are common: only a person can tell whether the file means the one that is there.
  if (byNumber.length === 0 && context.ask({ field: 'unit', was: found.id, is: `${row.unit}, another unit` }))
    return null;
  context.remark(`${row.registration} ${row.unit} is taken for the unit that is recorded as ${found.id}.`);
  context.alias(row.unit, found.id);
  return found;
}

function alike(a: string | null, b: string): boolean {
  return a !== null && a.trim().toLowerCase() === b.trim().toLowerCase();
}

function approvalOf(row: Row, stored: Approval | null): Approval | null {
  together(row.approval, row.approval_document, 'approval_document', 'Kind and document of the approval');
  if (row.approval === null || row.approval_document === null) return stored;
  together(row.accepted_by, row.accepted_on, 'accepted_on', 'Who accepted it and when');
  return {
    basis: row.approval,
    document: documentNamed(row.approval_document, row.approved_on, row.approval_revision),
    approvedOn: row.approved_on,
    releasedOn: row.released_on,
    permission: row.permission,
    modelListed: row.model_listed,
    grants: row.grants,
    acceptedBy:
      row.accepted_by === null || row.accepted_on === null ? null : { asOf: row.accepted_on, by: row.accepted_by },
  };
}

function blankUnit(id: string): Unit {
  return {
    id,
    name: id,
    typeId: null,
    functions: [],
    serial: null,
    openingId: null,
    place: null,
    software: null,
    offsetIn: null,
    options: [],
    approval: null,
    manufactured: null,
    fitted: null,
    deactivated: null,
    massLb: null,
    armIn: null,
    asBuilt: null,
    notes: null,
  };
}
