import { codeWords, dateWords, idWords } from '@tallywing/rules';
import { listWords } from '../../ui/words.js';

/** One thing that somebody did; without a subject where that goes without saying. */
interface Deed {
  readonly kind: string;
  readonly subject: { readonly name: string } | null;
}

/** The values that it changed, as the API gives them. */
export interface Changed {
  readonly before?: unknown;
  readonly after?: unknown;
}

const deeds: Readonly<Record<string, string>> = {
  'organisation.found': 'Founded the house',
  'person.add': 'Added the person',
  'person.amend': 'Changed the person',
  'person.password': 'Set a new password for',
  'person.own-password': 'Own password changed by',
  'person.deactivate': 'Deactivated',
  'person.reactivate': 'Let in again',
  'person.sessions': 'Ended sessions of',
  'operator.add': 'Added the operator',
  'operator.rename': 'Renamed the operator',
  'base.add': 'Added the base',
  'base.amend': 'Changed the base',
  'flight-profile.add': 'Added the flight profile',
  'flight-profile.amend': 'Changed the flight profile',
  'flight-profile.order': 'Changed the order of',
  'test-set.add': 'Added the test set',
  'test-set.amend': 'Changed the test set',
  'test-set.calibration': 'Entered a check of',
  'test-set.strike': 'Struck out a check of',
  'agency.add': 'Added the agency',
  'agency.amend': 'Changed the agency',
  'sign-in': 'Signed in',
  'sign-in.failed': 'A sign-in failed',
  'sign-out': 'Signed out',
  refused: 'Was refused',
  import: 'Read files in',
  export: 'Took data away',
  'policy.set': 'Set the policy',
};

/** 'Changed the person Jory Pellam'. */
export function deedWords({ kind, subject }: Deed): string {
  return `${deeds[kind] ?? codeWords(kind.replace('.', ' '))} ${subject?.name ?? ''}`.trim();
}

const labels: Readonly<Record<string, string>> = {
  operatorId: 'Operator',
  active: 'May sign in',
  sessionsEnded: 'Sessions ended',
  topFt: 'Highest altitude, ft',
  localTrainingNm: 'Local training, NM',
  wanted: 'On the board',
  overWaterBeyondGlide: 'Over water beyond gliding distance',
  errand: 'Errand',
  region: 'Region',
  asFound: 'As found',
  address: 'From address',
  action: 'Right that it takes',
  door: 'Asked for',
  from: 'Counts from',
  days: 'Days for which a reading counts',
  noticeDays: 'Remarked on after days',
  count: 'Count of days',
  statuses: 'Sources that want a say-so',
  by: 'Whose say-so counts',
  reason: 'Why',
};

export interface ChangedValue {
  readonly label: string;
  /** null where there was nothing before. */
  readonly was: string | null;
  readonly is: string;
}

/** The values of an entry, one line each. */
export function changedValues({ before, after }: Changed): readonly ChangedValue[] {
  const was = before as Readonly<Record<string, unknown>> | null;
  return Object.entries((after ?? {}) as Readonly<Record<string, unknown>>).map(([field, value]) => ({
    label: labels[field] ?? idWords(field.replace(/([A-Z])/g, ' $1')),
    was: was === null ? null : valueWords(field, was[field]),
    is: valueWords(field, value),
  }));
}

/** Fields whose texts are codes of the rules or of the house; all others stand as people wrote them. */
const coded = new Set([
  'mode',
  'state',
  'role',
  'kind',
  'ratings',
  'rules',
  'light',
  'purpose',
  'airspace',
  'approaches',
  'asFound',
  'count',
  'statuses',
  'by',
]);

function valueWords(field: string, value: unknown): string {
  if (value === null || value === undefined || value === '') return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return listWords(value.map((each) => valueWords(field, each))) || 'none';
  if (typeof value === 'object') {
    return Object.entries(value)
      .map(([name, inner]) => `${name} ${valueWords(name, inner)}`)
      .join('; ');
  }
  if (typeof value !== 'string') return JSON.stringify(value);
  return coded.has(field) ? codeWords(value) : dateWords(value);
}
