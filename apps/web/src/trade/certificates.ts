import { type Agency, agencyKind, codeWords, rating } from '@tallywing/rules';
import type { graphql } from '../graphql.js';

/** As GraphQL spells the rule library's words. */
export type KindName = ReturnType<typeof graphql.scalar<'AgencyKind'>>;
export type RatingName = ReturnType<typeof graphql.scalar<'Rating'>>;

export interface CertificateLike {
  readonly kind: KindName;
  readonly number: string | null;
  readonly ratings: readonly RatingName[] | null;
}

/** As the API spells a code of the rule library. */
export const nameOf = <Name extends string>(code: string): Name => code.toUpperCase().replace(/-/g, '_') as Name;

/** The rule library's own spelling of a name of the API. */
export const codeOf = <Code extends string>(name: string): Code => name.toLowerCase().replace(/_/g, '-') as Code;

export const kindOptions = agencyKind.options.map((code) => ({ id: nameOf<KindName>(code), name: codeWords(code) }));

type Codes = NonNullable<Agency['ratings']>;
const station: Codes = rating.options.filter((code) => /^(radio|instrument|limited|station)/.test(code));

/** Which ratings go with which certificate (14 CFR 65.71, 65.91, 65.107, 145.59, 61.5); a maker or carrier may hold any. */
const usual: Readonly<Partial<Record<Agency['kind'], Codes>>> = {
  mechanic: ['airframe', 'powerplant', 'inspection-authorization'],
  repairman: ['light-sport-maintenance'],
  'repair-station': station,
  pilot: ['private-pilot', 'sport-pilot'],
};

/** The ratings to choose from for a kind, with those already held even where they are unusual for it. */
export function ratingOptions(
  kind: KindName,
  held: readonly RatingName[],
): readonly { readonly id: RatingName; readonly name: string }[] {
  const codes = usual[codeOf<Agency['kind']>(kind)] ?? rating.options;
  const names = codes.map((code) => nameOf<RatingName>(code));
  return [...names, ...held.filter((each) => !names.includes(each))].map((id) => ({ id, name: codeWords(id) }));
}

/** 'Mechanic TW-M-0417: airframe, powerplant'. */
export function certificateWords({ kind, number, ratings }: CertificateLike): string {
  const held =
    ratings === null
      ? 'ratings not recorded'
      : ratings.length === 0
        ? 'no ratings'
        : ratings.map((each) => codeWords(each).toLowerCase()).join(', ');
  return `${codeWords(kind)} ${number ?? '(number not recorded)'}: ${held}`;
}
