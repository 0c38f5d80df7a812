import type { EquipmentType, Limitation } from '../src/catalogue/type.js';
import type { Agency } from '../src/dossier/common.js';
import type { Circuit, InstallationApproval, InstalledUnit, Link } from '../src/dossier/installation.js';
import type { Deferral, Readings, RecordHead } from '../src/dossier/status.js';

/** Nouns for tests with everything unstated unrecorded (null) or empty. */
export function unitOf(part: Partial<InstalledUnit> & Pick<InstalledUnit, 'id'>): InstalledUnit {
  return {
    name: part.id,
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
    ...part,
  };
}

export function linkOf(
  fromUnit: string,
  fromPort: string,
  toUnit: string,
  toPort: string,
  part: Partial<Link> = {},
): Link {
  return {
    id: `${fromUnit}.${fromPort}-${toUnit}.${toPort}`,
    fromUnit,
    fromPort,
    toUnit,
    toPort,
    cover: null,
    fitted: null,
    ...part,
  };
}

export function approvalOf(part: Partial<InstallationApproval> = {}): InstallationApproval {
  return {
    basis: 'field-approval',
    document: { title: 'Approved data', revision: 'A', date: '2024-01-10' },
    approvedOn: '2024-01-10',
    releasedOn: '2024-02-01',
    permission: null,
    modelListed: null,
    grants: null,
    acceptedBy: null,
    ...part,
  };
}

/** Readings of one kind; the others stay null. */
export function readingsOf(part: Partial<Readings>): Readings {
  const none = { altimeter: null, transponder: null, vor: null, staticLeak: null };
  return { ...none, correspondence: null, compass: null, bonding: null, interference: null, ...part };
}

/** What stands for time in service, and what an inspection's entry gives of it (43.11(a)). */
export const timeInService = {
  definitions: [{ id: 'tach', name: 'Tachometer', kind: 'tachometer', perFlightHour: 1000, offset: 0 }],
  timeInService: 'tach',
} as const;
export const totalTime = [{ meter: 'tach', value: 400_000 }] as const;

/** An entry that was seen, passed, by nobody in particular. */
export function recordOf(part: Partial<RecordHead> & Pick<RecordHead, 'kind'> & { readonly on: string }): RecordHead {
  const { on, ...rest } = part;
  return {
    id: `${part.kind}-${on}`,
    subjects: ['aircraft'],
    done: { date: on, at: null },
    meters: [],
    outcome: 'passed',
    enRoute: null,
    dueAt: null,
    evidence: 'entry-seen',
    entry: { book: 'Airframe log 2', page: '14' },
    agency: null,
    secondPerson: null,
    instrument: null,
    document: null,
    testedToFt: null,
    marked: null,
    place: null,
    expires: null,
    readings: null,
    note: null,
    ...rest,
  };
}

export const inspector: Agency = {
  kind: 'mechanic',
  name: 'R. Tamsin',
  certificate: 'M-0001',
  ratings: ['airframe', 'powerplant', 'inspection-authorization'],
};
export const mechanic: Agency = {
  kind: 'mechanic',
  name: 'J. Orrell',
  certificate: 'M-0002',
  ratings: ['airframe', 'powerplant'],
};
export const radioStation: Agency = {
  kind: 'repair-station',
  name: 'Wendle Avionics',
  certificate: 'RS-0003',
  ratings: ['radio-3', 'instrument-1', 'station-airframe'],
};
export const pilot: Agency = { kind: 'pilot', name: 'A. Lorne', certificate: 'P-0004', ratings: ['private-pilot'] };

/** A type with nothing stated but what the case gives. */
export function typeOf(part: Partial<EquipmentType> & Pick<EquipmentType, 'id' | 'functions'>): EquipmentType {
  return {
    family: part.id,
    maker: 'Quillon Works',
    name: part.id,
    partNumber: `QW-${part.id}`,
    document: `Installation manual ${part.id}`,
    revision: 'B',
    authorisations: [],
    bezel: null,
    massLb: null,
    drawA: null,
    supplyV: null,
    cooling: null,
    ports: [],
    databases: [],
    view: null,
    pairs: [],
    limitations: [],
    ...part,
  };
}

export function limitationOf(part: Partial<Limitation> & Pick<Limitation, 'kind'>): Limitation {
  return {
    functions: [],
    beyond: [],
    places: [],
    elsewhere: false,
    document: 'Installation manual',
    paragraph: '2.3',
    ...part,
  };
}

export function circuitOf(part: Partial<Circuit> & Pick<Circuit, 'id'>): Circuit {
  return {
    name: part.id,
    protector: 'breaker',
    ratingA: null,
    wireAwg: null,
    wireLengthFt: null,
    wireRating: null,
    ampacity: null,
    loadA: null,
    intermittent: null,
    usedIn: null,
    singleWireInOpenAir: null,
    units: [],
    essential: null,
    circuitsGuarded: null,
    ...part,
  };
}

/** A defect put off under 91.213(d) with everything that it asks for. */
export function deferralOf(part: Partial<Deferral> & Pick<Deferral, 'on'>): Deferral {
  return {
    route: '91.213(d)',
    notRequired: true,
    secured: true,
    placarded: true,
    recorded: true,
    noHazardBy: mechanic,
    letterAboard: null,
    reinspectedOn: null,
    ...part,
  };
}
