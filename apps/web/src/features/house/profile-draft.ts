import { airspaces, approaches, codeWords, errands, type FlightConditions, purposes } from '@tallywing/rules';
import type { VariablesOf } from '../../graphql.js';
import { listWords } from '../../ui/words.js';
import type { AddFlightProfileMutation, Profile } from './query.js';

/** A flight profile while it is being written: the rule library's words, numbers as they are typed. */
export interface ProfileDraft {
  readonly name: string;
  readonly wanted: boolean;
  readonly rules: FlightConditions['rules'];
  readonly light: FlightConditions['light'];
  readonly purpose: FlightConditions['purpose'];
  readonly airspace: readonly string[];
  readonly topFt: string;
  readonly localTrainingNm: string;
  readonly overWaterBeyondGlide: boolean;
  readonly crewOnly: boolean;
  /** Empty: nobody said. */
  readonly errand: NonNullable<FlightConditions['errand']> | '';
  readonly region: string;
  readonly approaches: readonly string[];
}

const airspaceNames: Readonly<Record<FlightConditions['airspace'][number], string>> = {
  controlled: 'controlled airspace',
  'class-a': 'class A',
  'class-b-c': 'class B or C',
  'over-class-b-c': 'over class B or C',
  'ring-30nm': 'within 30 NM of a part 91 appendix D airport',
  'ring-10nm': 'within 10 NM of a part 91 appendix D airport',
  'at-or-above-10000': 'at or above 10,000 ft',
  'gulf-3000': 'over the Gulf at or above 3,000 ft',
};

const errandNames: Readonly<Record<NonNullable<FlightConditions['errand']>, string>> = {
  'newly-acquired': 'ferry of a newly acquired airplane to where its transmitter is fitted',
  'to-repair-of-elt': 'ferry with an inoperative transmitter to where it can be repaired',
  'design-or-test': 'design and testing',
  'manufacture-or-delivery': 'manufacture, preparation or delivery of a new aircraft',
  'aerial-application': 'aerial application',
  'research-and-development': 'research and development',
  'compliance-or-exhibition': 'showing compliance, crew training, exhibition, racing or market survey',
  'none-of-these': 'none of these',
};

const options = <Code extends string>(codes: readonly Code[], words: (code: Code) => string) =>
  codes.map((id) => ({ id, name: words(id) }));

export const purposeOptions = options(purposes, codeWords);
export const errandOptions = [{ id: '' as const, name: 'not said' }, ...options(errands, (code) => errandNames[code])];
export const airspaceOptions = options(airspaces, (code) => airspaceNames[code]);
export const approachOptions = options(approaches, (code) => code.toUpperCase().replace('-', '/'));

export function draftOf(profile: Profile | null): ProfileDraft {
  const conditions = profile?.conditions as FlightConditions | undefined;
  return {
    name: profile?.name ?? '',
    wanted: profile?.wanted ?? true,
    rules: conditions?.rules ?? 'vfr',
    light: conditions?.light ?? 'day',
    purpose: conditions?.purpose ?? 'private',
    airspace: conditions?.airspace ?? [],
    topFt: String(conditions?.topFt ?? 5000),
    localTrainingNm: conditions?.localTrainingNm == null ? '' : String(conditions.localTrainingNm),
    overWaterBeyondGlide: conditions?.overWaterBeyondGlide ?? false,
    crewOnly: conditions?.crewOnly ?? false,
    errand: conditions?.errand ?? '',
    region: conditions?.region ?? '',
    approaches: conditions?.approaches ?? [],
  };
}

/** What a person must mend before it can be sent, by field; null where nothing. */
export function numberProblem(draft: ProfileDraft, field: 'topFt' | 'localTrainingNm'): string | null {
  const text = draft[field].replace(/[\s,]/g, '');
  if (/^\d{1,6}$/.test(text) || (field === 'localTrainingNm' && text === '')) return null;
  return field === 'topFt'
    ? 'Write the highest altitude as whole feet.'
    : 'Write the radius as whole miles, or leave it empty.';
}

type Input = VariablesOf<typeof AddFlightProfileMutation>['input'];

/** As the API takes it; null while a number is wrong. */
export function inputOf(draft: ProfileDraft): Input | null {
  if (numberProblem(draft, 'topFt') !== null || numberProblem(draft, 'localTrainingNm') !== null) return null;
  const number = (text: string) => Number(text.replace(/[\s,]/g, ''));
  const conditions = {
    rules: spelled(draft.rules),
    light: spelled(draft.light),
    purpose: spelled(draft.purpose),
    airspace: draft.airspace.map(spelled),
    topFt: number(draft.topFt),
    localTrainingNm: draft.localTrainingNm.trim() === '' ? null : number(draft.localTrainingNm),
    overWaterBeyondGlide: draft.overWaterBeyondGlide,
    crewOnly: draft.crewOnly,
    errand: draft.errand === '' ? null : spelled(draft.errand),
    region: draft.region.trim() === '' ? null : draft.region.trim(),
    approaches: draft.approaches.map(spelled),
  };
  return { name: draft.name.trim(), wanted: draft.wanted, conditions: conditions as Input['conditions'] };
}

function spelled(code: string): string {
  return code.toUpperCase().replace(/-/g, '_');
}

/** 'IFR by day, rental, to 10,000 ft, controlled airspace; LPV or ILS'. */
export function flightWords(flight: FlightConditions): string {
  // A profile saved before these were asked has neither.
  const { errand = null, region = null } = flight;
  const parts = [
    `${flight.rules.toUpperCase()} by ${flight.light}`,
    codeWords(flight.purpose).toLowerCase(),
    `to ${flight.topFt.toLocaleString('en-US')} ft`,
    ...flight.airspace.map((code) => airspaceNames[code]),
    ...(flight.localTrainingNm === null ? [] : [`local training within ${flight.localTrainingNm} NM`]),
    ...(flight.overWaterBeyondGlide ? ['over water beyond gliding distance'] : []),
    ...(flight.crewOnly ? ['crew only'] : []),
    ...(errand === null || errand === 'none-of-these' ? [] : [errandNames[errand]]),
    ...(region === null ? [] : [`within ${region}`]),
  ];
  const wanted = approachOptions.filter(({ id }) => flight.approaches.includes(id)).map(({ name }) => name);
  return wanted.length === 0 ? parts.join(', ') : `${parts.join(', ')}; ${listWords(wanted, 'or')} approach`;
}

/** The order with one moved up (-1) or down (1); the same list where it cannot move. */
export function moved(ids: readonly string[], id: string, by: -1 | 1): readonly string[] {
  const at = ids.indexOf(id);
  const other = ids[at + by];
  if (at < 0 || other === undefined) return ids;
  return ids.map((each) => (each === id ? other : each === other ? id : each));
}
