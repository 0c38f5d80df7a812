import type { FunctionCode } from '../catalogue/type.js';
import type { Aircraft } from '../dossier/aircraft.js';
import type { Agency, Rating } from '../dossier/common.js';
import type { SourceRef } from '../facts/source.js';
import type { Facts } from '../graph/facts.js';
import { holdsAny } from './accomplished.js';
import { aim, cfr, practice } from './cite.js';

/** One task and who may do or sign it. Null: what is recorded of the person or station does not settle it. */
export interface Task {
  readonly id: string;
  readonly may: (agency: Agency) => boolean | null;
  readonly source: SourceRef;
}

/** The one home of "who may": 14 CFR 43.3, 43.7, 65.95, 91.411(b), 91.413(c), by task. */
export const tasks = {
  annualInspection: {
    id: 'annual-inspection',
    source: cfr('43.3, 43.7, 65.95(a)(2)'),
    may: mayApproveAnnual,
  },
  hundredHour: { id: 'hundred-hour-inspection', source: cfr('43.3, 43.7, 65.85, 65.87'), may: wholeAircraft },
  /** The supervisor of a progressive program (91.409(d)(1)). */
  progressive: { id: 'progressive-inspection', source: cfr('91.409(d)(1)'), may: mayApproveAnnual },
  lightSportInspection: {
    id: 'light-sport-inspection',
    source: cfr('91.327(b)(1), (c)(1)'),
    may: (agency) =>
      agency.kind === 'repairman' ? holdsAny(agency, 'light-sport-maintenance') : wholeAircraft(agency),
  },
  /** A builder's repairman certificate names one aircraft; the recorded ratings do not say which. */
  experimentalInspection: {
    id: 'condition-inspection',
    source: cfr('65.104, 91.319(g); operating limitations', 'from-memory'),
    may: (agency) => (agency.kind === 'repairman' ? null : wholeAircraft(agency)),
  },
  altimeterTest: { id: 'altimeter-test', source: cfr('91.411(b)'), may: (agency) => mayTestAltitude(agency, false) },
  /** The one test of 91.411 that a mechanic with an airframe rating may do. */
  staticTest: { id: 'static-system-test', source: cfr('91.411(b)(3)'), may: (agency) => mayTestAltitude(agency, true) },
  /** A mechanic is not named, with inspection authorization or without. */
  transponderTest: { id: 'transponder-test', source: cfr('91.413(c)'), may: mayTestTransponder },
  /** Appendix E(c): "an appropriately rated person", for either side of the chain. */
  correspondence: {
    id: 'altitude-correspondence-test',
    source: cfr('43 appendix E(c), 91.411(b), 91.413(c)'),
    may: (agency) => either(mayTestAltitude(agency, false), mayTestTransponder(agency)),
  },
  maintenance: { id: 'maintenance', source: cfr('43.3'), may: mayMaintain },
  pilotCheck: {
    id: 'pilot-flight-check',
    source: cfr('91.407(b)'),
    may: (agency) => holdsAny(agency, 'private-pilot'),
  },
  /** Data of 43.3(k) are the pilot's; whoever flies under IFR by them compares them. */
  dataVerification: {
    id: 'data-verification',
    source: aim('1-1-17, approval table; 1-2-3, note 4'),
    may: (agency) => holdsAny(agency, 'private-pilot'),
  },
  /** Whether a swing is an instrument repair, for a station alone, is disputed; both are taken. */
  compassSwing: { id: 'compass-swing', source: practice('who may swing a compass'), may: mayMaintain },
} as const satisfies Readonly<Record<string, Task>>;

const trayMounted: readonly FunctionCode[] = [
  'com',
  'vor-receiver',
  'loc-receiver',
  'gs-receiver',
  'gnss',
  'lateral-deviation',
  'vertical-deviation',
  'integrity-annunciation',
  'approach-annunciation',
  'source-annunciation',
];

/**
 * Approval for return to service of work on a unit (43.7). A pilot's approval covers own preventive maintenance only: of avionics
 * the exchange of tray-mounted front-panel navigation and communication units, never transponder, autopilot or microwave DME
 * (part 43 appendix A(c)(31)). Whether a unit is tray-mounted is not recorded. `functions` null: the unit is gone.
 */
export function release(functions: ReadonlySet<FunctionCode> | null, certificate: Aircraft['certificate']): Task {
  return {
    id: 'release-entry',
    source: cfr('43.7, 43.3(g), 43 appendix A(c)(31)'),
    may: (agency) => {
      if (agency.kind === 'repairman') {
        if (certificate !== null && certificate !== 'light-sport') return false;
        return certificate === null ? null : holdsAny(agency, 'light-sport-maintenance');
      }
      if (agency.kind !== 'pilot') return mayMaintain(agency);
      if (functions !== null && [...functions].some((each) => !trayMounted.includes(each))) return false;
      return holdsAny(agency, 'private-pilot', 'sport-pilot') === false ? false : null;
    },
  };
}

/** Approval for return to service of work on these subjects, one of which may be gone. */
export function releaseOf({ units, dossier }: Facts, subjects: readonly string[]): Task {
  const worked = subjects.flatMap((each) => units.get(each) ?? []);
  const functions = worked.length < subjects.length ? null : new Set(worked.flatMap((each) => [...each.functions]));
  return release(functions, dossier.configuration.aircraft.certificate);
}

/**
 * Replacing a battery is preventive maintenance (part 43 appendix A(c)(24)): a pilot may, on an aircraft of his own, a sport pilot on a
 * light-sport one. That the aircraft is the pilot's own, the signature says.
 */
export function batteryReplacement(certificate: Aircraft['certificate']): Task {
  return {
    id: 'elt-battery',
    source: cfr('43.3(g), 43.7, 43 appendix A(c)(24)'),
    may: (agency) => {
      if (agency.kind !== 'pilot') return release(null, certificate).may(agency);
      if (holdsAny(agency, 'private-pilot') !== false) return holdsAny(agency, 'private-pilot');
      return certificate === null
        ? inDoubt(agency, 'sport-pilot')
        : certificate === 'light-sport' && holdsAny(agency, 'sport-pilot');
    },
  };
}

/** An inspection authorization, a rated station, the manufacturer (43.7). */
function mayApproveAnnual(agency: Agency): boolean | null {
  if (agency.kind === 'manufacturer') return true;
  if (agency.kind === 'repair-station') return holdsAny(agency, 'station-airframe');
  return agency.kind === 'mechanic' ? holdsAny(agency, 'inspection-authorization') : false;
}

/** Both airframe and powerplant, which an inspection authorization presupposes (65.91(c)). */
function wholeAircraft(agency: Agency): boolean | null {
  if (agency.kind === 'manufacturer') return true;
  if (agency.kind === 'repair-station') return holdsAny(agency, 'station-airframe');
  if (agency.kind !== 'mechanic') return false;
  const both = ['airframe', 'powerplant'].every((each) => agency.ratings?.includes(each as Rating));
  return both ? true : holdsAny(agency, 'inspection-authorization');
}

/** 91.411(b). Which makes a limited rating names is not recorded; a rating limited to the test names the test. */
function mayTestAltitude(agency: Agency, staticSystem: boolean): boolean | null {
  if (agency.kind === 'manufacturer') return true;
  if (agency.kind === 'mechanic')
    return staticSystem ? holdsAny(agency, 'airframe', 'inspection-authorization') : false;
  if (agency.kind !== 'repair-station') return false;
  return either(
    holdsAny(agency, 'instrument-1', 'limited-for-test', 'station-airframe'),
    inDoubt(agency, 'instrument-limited'),
  );
}

/** 91.413(c). The manufacturer of the aircraft may test only what it installed itself, which is not recorded. */
function mayTestTransponder(agency: Agency): boolean | null {
  if (agency.kind === 'carrier') return true;
  if (agency.kind === 'manufacturer') return null;
  if (agency.kind !== 'repair-station') return false;
  return either(holdsAny(agency, 'radio-3', 'limited-for-test'), inDoubt(agency, 'radio-limited'));
}

function mayMaintain(agency: Agency): boolean | null {
  if (agency.kind === 'manufacturer' || agency.kind === 'carrier') return true;
  if (agency.kind === 'mechanic') return holdsAny(agency, 'airframe', 'inspection-authorization');
  if (agency.kind === 'repair-station') return agency.ratings === null ? null : agency.ratings.length > 0;
  return false;
}

function inDoubt(agency: Agency, rating: Rating): false | null {
  return holdsAny(agency, rating) === false ? false : null;
}

function either(a: boolean | null, b: boolean | null): boolean | null {
  if (a === true || b === true) return true;
  return a === null || b === null ? null : false;
}
