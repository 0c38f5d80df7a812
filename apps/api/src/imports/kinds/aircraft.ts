import type { ChangeOf } from '@tallywing/rules';
import type { Draft, PlanContext, RowOf } from '../file-kind.js';
import { fileKind, optional, required } from '../file-kind.js';
import * as form from '../forms.js';
import { vocabulary } from '../vocabulary.js';
import { documentNamed, need, over, same, together } from './shared.js';

type Aircraft = ChangeOf<'aircraft.add'>['aircraft'];
type ListName = ChangeOf<'completeness.state'>['lists'][number]['list'];
const listed = <W extends string>(field: string) => vocabulary<W>('aircraft.add', `aircraft.${field}`);

const columns = {
  registration: required(form.registration, 'Registration; the aircraft is the same one again by it.'),
  make: required(form.text, 'Maker of the airframe.'),
  model: required(form.text, 'Model as the type certificate or the builder names it.'),
  kind: required(form.word(listed<Aircraft['kind']>('kind')), 'Kind of aircraft.'),
  base: required(form.text, 'Where it lives: the name of a base; its zone ends the calendar months.'),
  base_zone: optional(form.zone, 'Zone of the base; needed for a base that is not known yet.'),
  operator: optional(form.text, 'Who operates it; a name that is not known yet becomes a new operator.'),
  serial: optional(form.text, 'Serial number of the airframe.'),
  certificate: optional(
    form.word(listed<NonNullable<Aircraft['certificate']>>('certificate')),
    'Kind of airworthiness certificate.',
  ),
  category: optional(form.word(listed<NonNullable<Aircraft['category']>>('category')), 'Category of the certificate.'),
  basis: optional(form.word(listed<NonNullable<Aircraft['basis']>['code']>('basis.code')), 'Certification basis.'),
  basis_amendment: optional(form.wholeNumber, 'Amendment of the basis.'),
  manufactured: optional(form.date, 'Day of manufacture.'),
  engine: optional(form.word(listed<NonNullable<Aircraft['engine']>>('engine')), 'Kind of engine.'),
  engine_count: optional(form.wholeNumber, 'Number of engines.'),
  engine_driven_electrical: optional(form.yesNo, 'Whether the engine drives the electrical system.'),
  max_weight_lb: optional(form.decimalNumber, 'Greatest certificated weight, pounds.'),
  seats: optional(form.wholeNumber, 'Number of seats.'),
  retractable_gear: optional(form.yesNo, 'Whether the gear retracts.'),
  liquid_cooled: optional(form.yesNo, 'Whether the engine is liquid-cooled.'),
  altitude_engine: optional(form.yesNo, 'Whether the engine is an altitude engine.'),
  max_altitude_ft: optional(form.wholeNumber, 'Greatest operating altitude, feet.'),
  program: optional(
    form.word(listed<NonNullable<Aircraft['program']>['kind']>('program.kind')),
    'Inspection program, where it is not the plain annual inspection.',
  ),
  program_document: optional(form.text, 'Document of the program.'),
  authority_document: optional(
    form.text,
    'Manual, placard or operating limitations that state the kinds of operation.',
  ),
  day_vfr: optional(form.yesNo, 'VFR by day allowed by that document.'),
  night_vfr: optional(form.yesNo, 'VFR by night allowed by that document.'),
  ifr: optional(form.yesNo, 'IFR allowed by that document.'),
  hire: optional(form.yesNo, 'Hire allowed by that document and the certificate.'),
  condition_months: optional(form.wholeNumber, 'Months between condition inspections by the operating limitations.'),
  static_systems: optional(form.ids, 'Short names of its static systems.'),
  hours_per_month: optional(form.hours, 'Hours flown in a usual month, for dates that are projected.'),
  reading_good_days: optional(form.wholeNumber, 'Days for which a meter reading may be used.'),
  empty_weight_lb: optional(form.decimalNumber, 'Empty weight by the record, pounds.'),
  empty_arm_in: optional(form.decimalNumber, 'Arm of the empty weight, inches.'),
  mac_in: optional(form.decimalNumber, 'Mean aerodynamic chord, inches.'),
  mass_revised_on: optional(form.date, 'Day of the empty-weight record.'),
  weighed: optional(form.yesNo, 'Whether that record comes from a weighing.'),
  equipment_list_on: optional(form.date, 'Day of the last revision of the equipment list.'),
  complete_lists: optional(
    form.words(vocabulary<ListName>('completeness.state', 'lists.list')),
    'Lists that somebody has stated to be complete; without it, "none" counts as not known.',
  ),
  complete_as_of: optional(form.date, 'Day for which they are complete.'),
  complete_by: optional(form.text, 'Who stated it.'),
} as const;
type Row = RowOf<typeof columns>;

export const aircraftFile = fileKind({
  kind: 'aircraft',
  says: 'One row for each aircraft. It comes first: the rows of every other file belong to an aircraft.',
  keySays: 'registration',
  columns,
  key: (row) => row.registration,
  plan: (row, context) => [
    ...own(row, context),
    ...authority(row, context),
    ...flying(row, context),
    ...staticSystems(row, context),
    ...mass(row, context),
    ...complete(row, context),
  ],
  fields: {
    'aircraft.registration': 'registration',
    'aircraft.base.zone': 'base_zone',
    'aircraft.manufactured': 'manufactured',
    'aircraft.operatorId': 'operator',
    'aircraft.engineCount': 'engine_count',
    'aircraft.maxWeightLb': 'max_weight_lb',
    'aircraft.seats': 'seats',
    'aircraft.basis.amendment': 'basis_amendment',
    'aircraft.maxOperatingAltitudeFt': 'max_altitude_ft',
    'authority.conditionInspectionMonths': 'condition_months',
    'utilisation.readingGoodForDays': 'reading_good_days',
    'mass.revisedOn': 'mass_revised_on',
    'mass.emptyWeightLb': 'empty_weight_lb',
    'lists.0.stated.asOf': 'complete_as_of',
  },
});

function own(row: Row, context: PlanContext): Draft[] {
  const stored = context.dossier.configuration.aircraft;
  const stated = {
    registration: row.registration,
    make: row.make,
    model: row.model,
    kind: row.kind,
    base: context.baseNamed(row.base, row.base_zone),
    operatorId: row.operator === null ? null : context.operatorNamed(row.operator),
    serial: row.serial,
    certificate: row.certificate,
    category: row.category,
    basis: row.basis === null ? null : { code: row.basis, amendment: row.basis_amendment },
    manufactured: row.manufactured,
    engine: row.engine,
    engineCount: row.engine_count,
    engineDrivenElectrical: row.engine_driven_electrical,
    maxWeightLb: row.max_weight_lb,
    seats: row.seats,
    retractableGear: row.retractable_gear,
    liquidCooled: row.liquid_cooled,
    altitudeEngine: row.altitude_engine,
    maxOperatingAltitudeFt: row.max_altitude_ft,
    program:
      row.program === null
        ? null
        : { kind: row.program, document: row.program_document === null ? null : documentNamed(row.program_document) },
  };
  const aircraft = over(stored, stated);
  if (context.isNew) return [{ kind: 'aircraft.add', aircraft: { ...aircraft, notWanted: [] } }];
  if (same(aircraft, stored)) return [];
  const performed = { date: context.today, at: null };
  return [{ kind: 'aircraft.amend', aircraft, reason: `Import of ${context.file}`, performed }];
}

function authority(row: Row, { dossier }: PlanContext): Draft[] {
  const stated = [row.day_vfr, row.night_vfr, row.ifr, row.hire, row.condition_months];
  if (row.authority_document === null && stated.every((each) => each === null)) return [];
  const title = need(
    row.authority_document,
    'authority_document',
    'What the aircraft may be used for needs the document that says so.',
    'Name the manual, placard or operating limitations.',
  );
  const stored = dossier.configuration.authority;
  const blank = { dayVfr: null, nightVfr: null, ifr: null, hire: null, conditionInspectionMonths: null };
  const found = over(stored ?? { ...blank, document: documentNamed(title) }, {
    dayVfr: row.day_vfr,
    nightVfr: row.night_vfr,
    ifr: row.ifr,
    hire: row.hire,
    conditionInspectionMonths: row.condition_months,
    document: stored?.document.title === title ? stored.document : documentNamed(title),
  });
  return stored !== null && same(found, stored) ? [] : [{ kind: 'authority.set', authority: found }];
}

function flying(row: Row, { dossier }: PlanContext): Draft[] {
  const stored = dossier.meters.utilisation;
  const utilisation = over(stored, { perMonth: row.hours_per_month, readingGoodForDays: row.reading_good_days });
  return same(utilisation, stored) ? [] : [{ kind: 'utilisation.set', utilisation }];
}

function staticSystems(row: Row, { dossier }: PlanContext): Draft[] {
  const known = new Set(dossier.configuration.staticSystems.map(({ id }) => id));
  return (row.static_systems ?? [])
    .filter((id) => !known.has(id))
    .map((id) => ({ kind: 'static-system.set', system: { id, name: `Static system ${id}`, lastOpened: null } }));
}

function mass(row: Row, { dossier }: PlanContext): Draft[] {
  if (row.empty_weight_lb === null && row.empty_arm_in === null && row.mass_revised_on === null) return [];
  together(row.empty_weight_lb, row.empty_arm_in, 'empty_arm_in', 'Empty weight and its arm');
  together(row.empty_weight_lb, row.mass_revised_on, 'mass_revised_on', 'Empty weight and the day of its record');
  if (row.empty_weight_lb === null || row.empty_arm_in === null || row.mass_revised_on === null) return [];
  const stored = dossier.configuration.mass;
  // A record of the same day or an older one says nothing new.
  if (stored !== null && stored.revisedOn >= row.mass_revised_on) return [];
  return [
    {
      kind: 'mass.revise',
      mass: {
        emptyWeightLb: row.empty_weight_lb,
        emptyArmIn: row.empty_arm_in,
        revisedOn: row.mass_revised_on,
        weighed: row.weighed ?? false,
        macIn: row.mac_in,
        envelope: stored?.envelope ?? null,
        equipmentListRevisedOn: row.equipment_list_on,
        changesSince: [],
      },
    },
  ];
}

function complete(row: Row, { dossier }: PlanContext): Draft[] {
  if (row.complete_lists === null) return [];
  const asOf = need(
    row.complete_as_of,
    'complete_as_of',
    'A list is complete for a day.',
    'Give the day for which it was stated.',
  );
  const by = need(row.complete_by, 'complete_by', 'Somebody must have stated it.', 'Name the person.');
  const lists = row.complete_lists
    .map((list) => ({ list, stated: { asOf, by } }))
    // A statement for a later day stands; one for the same day by another person takes nothing away.
    .filter(({ list }) => !dossier.status.completeness.some((each) => each.list === list && each.stated.asOf >= asOf));
  return lists.length === 0 ? [] : [{ kind: 'completeness.state', lists }];
}
