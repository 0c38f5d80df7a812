import { apply, openAtRelease, type Agency, type Catalogue, type Dossier, type OpenAtRelease } from '@tallywing/rules';
import { codeOf, nameOf, type KindName, type RatingName } from '../../trade/certificates.js';
import { inputOf } from '../../form/change-input.js';
import { specFor } from './follow.js';

/** The entry of release while it is being written. */
export interface ReleaseDraft {
  readonly name: string;
  readonly certificate: {
    readonly kind: KindName | '';
    readonly number: string;
    readonly ratings: readonly RatingName[] | null;
  };
  /** Local day and time of the base. */
  readonly date: string;
  readonly at: string | null;
  /** Description of the work, or of the data by which it was done. */
  readonly note: string;
  readonly book: string;
  readonly page: string;
}

export interface ReleaseView {
  /** Null: nobody is named yet, so there is no entry to judge. */
  readonly entry: Entry | null;
  /** The work may not be released over these. */
  readonly stops: readonly OpenAtRelease[];
  /** These stay open, and whoever signs has looked at them. */
  readonly stays: readonly OpenAtRelease[];
}

type Entry = Dossier['status']['records'][number];

/**
 * What a release would find, judged as the server will: with the entry as far as it is written. What was open before the work
 * began is not this release's to close.
 */
export function releaseOf(
  draft: ReleaseDraft,
  id: string,
  job: { readonly openAtStart: readonly string[] },
  dossier: Dossier,
  catalogue: Catalogue,
  now: string,
): ReleaseView {
  const entry = entryOf(draft, id, dossier);
  const after = entry === null ? dossier : apply(dossier, { kind: 'record.add', version: 1, record: entry });
  const before = new Set(job.openAtStart);
  const open = openAtRelease(after, catalogue, now, entry?.id ?? null);
  const stops = open.filter((each) => each.stops && (!before.has(each.key) || each.subject === id));
  return { entry, stops, stays: open.filter((each) => !stops.includes(each)) };
}

/** It names everything that waits for an entry of release, and the aircraft. */
function entryOf(draft: ReleaseDraft, id: string, dossier: Dossier): Entry | null {
  const { kind, number, ratings } = draft.certificate;
  const name = draft.name.trim();
  if (name === '' || kind === '' || !/^\d{4}-\d{2}-\d{2}$/.test(draft.date)) return null;
  const owed = dossier.status.obligations.flatMap((each) =>
    each.what === 'release-entry' && each.closedBy === null ? [each.subject] : [],
  );
  const agency: Agency = {
    kind: codeOf<Agency['kind']>(kind),
    name,
    certificate: number.trim() || null,
    ratings: ratings === null ? null : ratings.map((each) => codeOf<NonNullable<Agency['ratings']>[number]>(each)),
  };
  const book = draft.book.trim();
  return {
    id,
    kind: 'release-entry',
    subjects: [...new Set(['aircraft', ...owed])],
    done: { date: draft.date, at: draft.at },
    meters: [],
    outcome: 'approved',
    enRoute: null,
    dueAt: null,
    evidence: 'entry-seen',
    entry: book === '' ? null : { book, page: draft.page.trim() || '1' },
    agency,
    secondPerson: null,
    instrument: null,
    document: null,
    testedToFt: null,
    marked: null,
    place: null,
    expires: null,
    readings: null,
    note: draft.note.trim() || null,
  };
}

/** Whoever was chosen from the house's list, as the form holds a signer. */
export function signedBy(value: unknown): Pick<ReleaseDraft, 'name' | 'certificate'> {
  const { kind, name, certificate, ratings } = value as Agency;
  return {
    name,
    certificate: {
      kind: nameOf<KindName>(kind),
      number: certificate ?? '',
      ratings: ratings === null ? null : ratings.map((each) => nameOf<RatingName>(each)),
    },
  };
}

/** The entry as the API takes it. */
export function entryInput(record: Entry): Record<string, unknown> {
  const change = inputOf({ kind: 'record.add', value: { record } }, specFor('record.add'));
  return (change['recordAdd'] as { readonly record: Record<string, unknown> }).record;
}
