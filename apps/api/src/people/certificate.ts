import { agencyKind, rating } from '@tallywing/rules';
import type { Agency } from '@tallywing/rules';
import { badInput } from '../common/errors.js';

/** What a person may sign, in the words of the rules. */
export interface Certificate {
  readonly kind: Agency['kind'];
  readonly number: string | null;
  /** null: nobody recorded them. */
  readonly ratings: Agency['ratings'];
}

/** Reads what is stored with a member; {} is "none recorded". Ratings may stand as words in one text. */
export function certificateOf(stored: unknown): Certificate | null {
  const { kind, number, ratings } = (stored ?? {}) as Readonly<Record<string, unknown>>;
  const known = agencyKind.safeParse(kind);
  if (!known.success) return null;
  const listed = typeof ratings === 'string' ? ratings.split(/\s+/) : ratings;
  return {
    kind: known.data,
    number: typeof number === 'string' ? number : null,
    ratings: Array.isArray(listed) ? listed.flatMap((each) => rating.safeParse(each).data ?? []) : null,
  };
}

/** @throws AppError BAD_INPUT naming the field */
export function checkedCertificate(given: Certificate | null | undefined, field: string): Certificate | null {
  if (given == null) return null;
  const number = given.number?.trim() ?? '';
  if (number.length > 200)
    throw badInput(`${field}.number`, 'The number has more than 200 characters.', 'Write the number alone.');
  if (!agencyKind.safeParse(given.kind).success)
    throw badInput(`${field}.kind`, 'There is no such certificate.', `Use one of ${agencyKind.options.join(', ')}.`);
  const wrong = given.ratings?.find((each) => !rating.safeParse(each).success);
  if (wrong !== undefined)
    throw badInput(`${field}.ratings`, `There is no rating ${wrong}.`, `Use of these: ${rating.options.join(', ')}.`);
  return {
    kind: given.kind,
    number: number === '' ? null : number,
    ratings: given.ratings == null ? null : [...new Set(given.ratings)].sort(),
  };
}
