import { classAFromFt, equippedFromFt } from '../facts/airspace.js';

/** The asker's facts about one flight. They are never kept on the aircraft. */
export const approaches = ['vor', 'loc', 'ils', 'lnav', 'lp', 'lnav-vnav', 'lpv'] as const;
export type Approach = (typeof approaches)[number];

export const purposes = [
  'private',
  'rental',
  'training-own-aircraft',
  'training-provided',
  'carriage-for-hire',
  'tow-for-hire',
  'aerial-work',
  'ferry',
] as const;
export type Purpose = (typeof purposes)[number];

/** What a flight is for, where 91.207(e) or (f) excepts it by its errand: nobody but the asker knows. The training of (f)(3) is told by its radius. */
export const errands = [
  'newly-acquired',
  'to-repair-of-elt',
  'design-or-test',
  'manufacture-or-delivery',
  'aerial-application',
  'research-and-development',
  'compliance-or-exhibition',
  'none-of-these',
] as const;
export type Errand = (typeof errands)[number];

/** Airspace that asks for equipment (91.215(b), 91.225(d)); `controlled` is what 91.411 speaks of. */
export const airspaces = [
  'controlled',
  'class-a',
  'class-b-c',
  'over-class-b-c',
  'ring-30nm',
  'ring-10nm',
  'at-or-above-10000',
  'gulf-3000',
] as const;
export type Airspace = (typeof airspaces)[number];

export interface FlightConditions {
  readonly rules: 'vfr' | 'ifr';
  readonly light: 'day' | 'night';
  readonly purpose: Purpose;
  readonly airspace: readonly Airspace[];
  readonly topFt: number;
  /** Radius of a claimed local training flight; null: no claim. */
  readonly localTrainingNm: number | null;
  readonly overWaterBeyondGlide: boolean;
  readonly crewOnly: boolean;
  /** Null: nobody said. */
  readonly errand: Errand | null;
  /** Region that the flight stays in, as the providers of navigation data call it; null: nobody said. */
  readonly region: string | null;
  /** At least one of these must be flyable; empty: none wanted. */
  readonly approaches: readonly Approach[];
}

/** Every key named must match: a list means one of; `topFt` at least; `localTrainingNm` at most; regions whatever their capitals. */
export interface When {
  readonly rules?: 'vfr' | 'ifr';
  readonly light?: 'day' | 'night';
  readonly purpose?: readonly Purpose[];
  readonly airspace?: readonly Airspace[];
  readonly topFt?: number;
  readonly localTrainingNm?: number;
  readonly overWaterBeyondGlide?: true;
  readonly crewOnly?: true;
  readonly errand?: readonly (Errand | 'unsaid')[];
  readonly region?: readonly string[];
  readonly regionSaid?: true;
}

/** What a field counts as when the asker leaves it open: the value that asks the most. */
export const strictest: FlightConditions = {
  rules: 'ifr',
  light: 'night',
  purpose: 'carriage-for-hire',
  airspace: airspaces,
  topFt: 51_000,
  localTrainingNm: null,
  overWaterBeyondGlide: true,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};

/** The house's default profile, for questions that name no conditions: an IFR training flight by day in controlled airspace to 9,000 ft, below the altitude that asks for more equipment. */
export const defaultConditions: FlightConditions = {
  rules: 'ifr',
  light: 'day',
  purpose: 'training-provided',
  airspace: ['controlled'],
  topFt: 9_000,
  localTrainingNm: null,
  overWaterBeyondGlide: false,
  crewOnly: false,
  errand: null,
  region: null,
  approaches: [],
};

/**
 * The flight in full: the default profile where nothing is asked, the strictest value for each field left open.
 * Who wants an approach flies under IFR, whatever the question says, so that what binds IFR alone binds it too.
 */
export function widenConditions(asked: Partial<FlightConditions> | undefined): FlightConditions {
  if (asked === undefined) return defaultConditions;
  const given = { ...strictest, ...asked };
  const flight = { ...given, airspace: withAltitude(given) };
  return flight.approaches.length > 0 ? { ...flight, rules: 'ifr' } : flight;
}

const altitudes = [
  { fromFt: equippedFromFt.value, airspace: 'at-or-above-10000' },
  { fromFt: classAFromFt.value, airspace: 'class-a' },
] as const;

/** What the altitude alone brings with it. That a flight stays within 2,500 ft of high ground, which would excuse it, nobody can say here. */
function withAltitude({ airspace, topFt }: FlightConditions): readonly Airspace[] {
  const brought = altitudes.flatMap((each) =>
    topFt >= each.fromFt && !airspace.includes(each.airspace) ? [each.airspace] : [],
  );
  return brought.length === 0 ? airspace : [...airspace, ...brought];
}

export function matches(when: When, asked: FlightConditions): boolean {
  return (
    (when.rules === undefined || when.rules === asked.rules) &&
    (when.light === undefined || when.light === asked.light) &&
    (when.purpose === undefined || when.purpose.includes(asked.purpose)) &&
    (when.airspace === undefined || when.airspace.some((each) => asked.airspace.includes(each))) &&
    (when.topFt === undefined || asked.topFt >= when.topFt) &&
    (when.localTrainingNm === undefined ||
      (asked.localTrainingNm !== null && asked.localTrainingNm <= when.localTrainingNm)) &&
    (when.overWaterBeyondGlide === undefined || asked.overWaterBeyondGlide) &&
    (when.crewOnly === undefined || asked.crewOnly) &&
    // A profile kept from before these were asked says neither.
    (when.errand === undefined || when.errand.includes(asked.errand ?? 'unsaid')) &&
    (when.regionSaid === undefined || (asked.region ?? null) !== null) &&
    (when.region === undefined || when.region.some((each) => sameName(each, asked.region ?? '')))
  );
}

function sameName(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
