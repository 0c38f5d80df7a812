import type { EquipmentType, FunctionCode } from '../catalogue/type.js';
import type { Change } from '../changes/changes.js';
import { touchedBy } from '../changes/checks.js';
import type { Agency, DocumentRef, Performed } from '../dossier/common.js';
import type { Antenna, Grant, InstalledUnit, MassChange } from '../dossier/installation.js';
import type { Dossier } from '../dossier/dossier.js';
import type { DatabaseKind } from '../catalogue/type.js';
import type { RecordHead, RecordKind } from '../dossier/status.js';
import { databaseCycleAt } from '../time/cycles.js';
import type { Instant } from '../time/instant.js';
import { addDays } from '../time/calendar.js';
import { civilDateAt } from '../time/zones.js';

/** What nobody can know before the work is done. Every step of a way back says which of these it rests on. */
export type Assumption =
  /** The test or inspection passes, and a person who may signs the entry. */
  | 'passes-and-is-signed'
  /** The missing facts turn out well. */
  | 'turns-out-well'
  /** Approved data, parts and room are there for this aircraft. */
  | 'data-and-parts-at-hand'
  /** The defect can be repaired. */
  | 'can-be-repaired'
  /** The item may be deferred: it is not required. */
  | 'may-be-deferred'
  /** Nothing is due again before the flight. */
  | 'not-due-again'
  /** A named person accepts what is there. */
  | 'accepted-as-found'
  /** The verification is for this flight and procedure only. */
  | 'this-flight-only';

const shop = 'whoever may';
export const mechanic: Agency = {
  kind: 'mechanic',
  name: shop,
  certificate: shop,
  ratings: ['airframe', 'powerplant', 'inspection-authorization'],
};
const station: Agency = {
  kind: 'repair-station',
  name: shop,
  certificate: shop,
  ratings: [
    'radio-1',
    'radio-2',
    'radio-3',
    'instrument-1',
    'instrument-2',
    'instrument-3',
    'instrument-4',
    'limited-for-test',
    'station-airframe',
  ],
};
const pilot: Agency = { kind: 'pilot', name: shop, certificate: shop, ratings: ['private-pilot'] };

/** Who signs what: somebody who may, as `who-may` has it. Kinds that are not here are signed by a mechanic. */
const signers: Partial<Record<RecordKind, Agency>> = {
  'static-system-test': station,
  'altimeter-test': station,
  'altitude-reporting-test': station,
  'transponder-test': station,
  'altitude-correspondence-test': station,
  'static-leak-test': station,
  'vor-check': pilot,
  'data-verification': pilot,
  'pilot-flight-check': pilot,
};
const approvedKinds: readonly RecordKind[] = [
  'annual-inspection',
  'airworthiness-certificate-inspection',
  'hundred-hour-inspection',
  'progressive-complete',
  'program-inspection',
  'condition-inspection',
  'release-entry',
];
/** An altitude test of a light aircraft is made to this unless the flight goes higher. Common practice. */
const usualTestFt = 20_000;
/** Years that an emergency transmitter's new battery is good for. Assumed; the battery's own date decides. */
const batteryYears = 2;

/** A VOR check counts by its bearings alone. */
const goodVorCheck: RecordHead['readings'] = {
  altimeter: null,
  transponder: null,
  staticLeak: null,
  correspondence: null,
  compass: null,
  bonding: null,
  interference: null,
  vor: {
    method: 'ground-checkpoint',
    expectedDeg: 360,
    indicatedDeg: 360,
    otherIndicatedDeg: null,
    stationEntryMade: null,
    earlierMethodsUnavailable: null,
    independentUnits: null,
    sameStation: null,
  },
};

export function performedAt(dossier: Dossier, at: Instant): Performed {
  return { date: civilDateAt(at, dossier.configuration.aircraft.base.zone), at };
}

/** An entry that counts, made at `at` with the hours of the last readings. */
export function entry(
  dossier: Dossier,
  at: Instant,
  kind: RecordKind,
  subject: string,
  topFt: number,
): Change & { readonly kind: 'record.add' } {
  const done = performedAt(dossier, at);
  const record: RecordHead = {
    id: `way-back-${kind}-${subject}-${at.replace(/[^0-9]/g, '')}`.slice(0, 80),
    kind,
    subjects: [subject],
    done,
    meters: metersOf(dossier, kind),
    outcome: approvedKinds.includes(kind) ? 'approved' : 'passed',
    enRoute: null,
    dueAt: null,
    evidence: 'entry-seen',
    entry: { book: shop, page: shop },
    agency: signers[kind] ?? mechanic,
    secondPerson: 'a second person',
    instrument: null,
    document: null,
    testedToFt: kind === 'altimeter-test' || kind === 'altitude-reporting-test' ? Math.max(usualTestFt, topFt) : null,
    marked: kind === 'altimeter-test' ? true : null,
    place: dossier.configuration.aircraft.base.name,
    expires: kind === 'elt-battery' ? addDays(done.date, batteryYears * 365) : null,
    readings: kind === 'vor-check' ? goodVorCheck : null,
    note: null,
  };
  return { kind: 'record.add', version: 1, record };
}

/** As last read; the counter of transmitting starts again with a new battery. */
function metersOf({ meters }: Dossier, kind: RecordKind): RecordHead['meters'] {
  const counters = meters.definitions.filter((each) => each.kind === 'elt-transmitter').map((each) => each.id);
  return Object.entries(meters.readings)
    .filter(([meter]) => kind !== 'elt-battery' || !counters.includes(meter))
    .map(([meter, { value }]) => ({ meter, value }));
}

/** The cycle in force at `at`, as the provider would print it. */
export function load(dossier: Dossier, at: Instant, unitId: string, database: DatabaseKind): Change {
  return {
    kind: 'database.load',
    version: 1,
    load: {
      unitId,
      database,
      slot: 'this',
      cycle: databaseCycleAt(at).id,
      effective: null,
      expires: null,
      loaded: performedAt(dossier, at),
      fromFlightDeck: true,
      coverage: null,
      notices: [],
    },
  };
}

const guidance: Partial<Record<FunctionCode, readonly Grant[]>> = {
  com: ['com'],
  'vor-receiver': ['nav-vor', 'approach-vor'],
  'loc-receiver': ['approach-loc'],
  'gs-receiver': ['approach-ils'],
  gnss: ['nav-gnss', 'approach-lnav', 'approach-lp', 'approach-lnav-vnav', 'approach-lpv'],
  transponder: ['altitude-reporting'],
  'altitude-reporting': ['altitude-reporting'],
  'ads-b-out-1090': ['ads-b-out'],
  'ads-b-out-uat': ['ads-b-out'],
};
const antennaFor: Partial<Record<FunctionCode, Antenna['kind']>> = {
  com: 'com',
  'vor-receiver': 'vor-loc',
  'loc-receiver': 'vor-loc',
  'gs-receiver': 'glide-slope',
  gnss: 'gnss-sbas',
  transponder: 'transponder',
  'ads-b-out-1090': 'transponder',
  'ads-b-out-uat': 'uat',
  elt: 'elt',
};

/** One for each band that the functions need. */
export function antennasFor(functions: readonly FunctionCode[]): readonly Antenna['kind'][] {
  return [...new Set(functions.flatMap((each) => antennaFor[each] ?? []))];
}

export function grantsOf(functions: readonly FunctionCode[]): readonly Grant[] {
  return [...new Set(functions.flatMap((each) => guidance[each] ?? []))];
}

/**
 * Takes out what stood there, fits the new unit in its place with an approval for all it can give, with antennas, supplement
 * and data. Its ports are joined by a deed of their own, once it is in.
 */
export function fit(
  dossier: Dossier,
  at: Instant,
  type: EquipmentType,
  replaced: InstalledUnit | null,
): readonly Change[] {
  const performed = performedAt(dossier, at);
  const unitId = `new-${type.functions.includes('gnss') ? 'navigator' : (type.functions[0] ?? 'unit')}`;
  const grants = [...grantsOf(type.functions)];
  const document = { title: `Approved data for ${type.name}`, revision: type.revision, date: performed.date };
  const touched = [...new Set([...touchedBy(type.functions), 'behind-panel' as const])];
  const unit: InstalledUnit = {
    id: unitId,
    name: `${type.maker} ${type.name}`,
    typeId: type.id,
    functions: [],
    serial: shop,
    openingId: replaced?.openingId ?? null,
    place: replaced?.place ?? type.view?.approvedPlaces[0] ?? 'remote',
    software: type.pairs.find((each) => each.software !== null)?.software ?? null,
    offsetIn: replaced?.offsetIn ?? 0,
    options: [],
    approval: {
      basis: 'stc-model-list',
      document,
      approvedOn: performed.date,
      releasedOn: performed.date,
      permission: true,
      modelListed: true,
      grants,
      acceptedBy: null,
    },
    manufactured: performed.date,
    fitted: performed,
    deactivated: null,
    massLb: type.massLb,
    armIn: replaced?.armIn ?? null,
    asBuilt: null,
    notes: null,
  };
  return [
    ...(replaced === null ? [] : takeOut(dossier, performed, replaced, touched)),
    { kind: 'unit.install', version: 1, unit, performed, touched, mass: massOf(dossier, unit, 1, performed) },
    ...antennasFor(type.functions).map((kind): Change => {
      const antenna = antennaOf(kind, unitId, replaced, dossier);
      return { kind: 'antenna.fit', version: 1, antenna, performed, touched: [] };
    }),
    supplementFor(dossier, unitId, document, grants),
    ...type.databases.map((each) => load(dossier, at, unitId, each.kind)),
  ];
}

/** In the place of the unit's supplement of before, if it has one. */
export function supplementFor(
  dossier: Dossier,
  unitId: string,
  document: DocumentRef,
  grants: readonly Grant[],
): Change {
  const old = dossier.configuration.supplements.find((each) => each.units.includes(unitId));
  return {
    kind: 'supplement.set',
    version: 1,
    supplement: {
      id: old?.id ?? `supplement-${unitId}`,
      units: [unitId],
      document,
      aboard: true,
      currentDataRequired: true,
      grants: [...grants],
    },
  };
}

/** The one of the unit that goes out, which others may share; else a new one. */
function antennaOf(kind: Antenna['kind'], unitId: string, replaced: InstalledUnit | null, dossier: Dossier): Antenna {
  if (replaced !== null) {
    const old = dossier.configuration.antennas.find((each) => each.kind === kind && each.units.includes(replaced.id));
    if (old) return { ...old, units: [...old.units.filter((each) => each !== replaced.id), unitId], approved: true };
  }
  return { id: `new-antenna-${kind}`, kind, units: [unitId], approved: true, xIn: null, yIn: null };
}

function takeOut(
  dossier: Dossier,
  performed: Performed,
  unit: InstalledUnit,
  touched: readonly ReturnType<typeof touchedBy>[number][],
): readonly Change[] {
  const { id } = unit;
  return [
    {
      kind: 'unit.remove',
      version: 1,
      unitId: id,
      performed,
      reason: 'replaced',
      touched: [...touched],
      mass: massOf(dossier, unit, -1, performed),
    },
    ...dossier.configuration.placards
      .filter((each) => each.unitId === id)
      .map((each): Change => ({ kind: 'placard.remove', version: 1, placardId: each.id, reason: 'its unit is out' })),
  ];
}

/** What goes onto the weight record with a unit that goes in (1) or comes out (-1); null: nobody knows, or there is no such record. */
function massOf(
  { configuration }: Dossier,
  { name, massLb, armIn }: InstalledUnit,
  sign: 1 | -1,
  { date }: Performed,
): MassChange | null {
  if (configuration.mass === null || massLb === null || armIn === null) return null;
  return { what: name, weightLb: sign * massLb, armIn, on: date, listed: true };
}
