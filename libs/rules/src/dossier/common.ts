import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { shortText } from '../catalogue/words.js';
import { isCivilDate, isInstant } from '../time/instant.js';

/**
 * Words shared by all nouns of the dossier. `null` everywhere means "nobody recorded it", never "none":
 * a rule that needs the fact answers cannot-tell.
 */

export const civilDate = z.string().refine(isCivilDate, 'must be a date YYYY-MM-DD that exists');
export const instant = z.string().refine(isInstant, 'must be a UTC time YYYY-MM-DDTHH:MMZ that exists');

/** Whole hundredths of an hour: 1,234.5 h is 123450. */
export const centihours = z
  .int()
  .min(0, 'hours cannot be negative')
  .max(20_000_000, 'more hours than an aircraft can have');

/** When a piece of work was done. `at` is needed only to order two pieces of work of one day. */
export const performed = z.object({ date: civilDate, at: instant.nullable() }).meta({ id: 'Performed' });
export type Performed = Read<typeof performed>;

/** How well a statement is known. Only an entry that was seen makes an inspection or a test count. */
export const evidenceGrade = z.enum(['entry-seen', 'reported', 'assumed']).meta({ id: 'EvidenceGrade' });
export type EvidenceGrade = Read<typeof evidenceGrade>;

/** Ratings and certificates named by 14 CFR 43.3, 43.7, 65.95, 91.411(b), 91.413(c) and 145.59. */
export const rating = z
  .enum([
    'airframe',
    'powerplant',
    'inspection-authorization',
    'light-sport-maintenance',
    'radio-1',
    'radio-2',
    'radio-3',
    'radio-limited',
    'instrument-1',
    'instrument-2',
    'instrument-3',
    'instrument-4',
    'instrument-limited',
    'limited-for-test',
    'station-airframe',
    'private-pilot',
    'sport-pilot',
  ])
  .meta({ id: 'Rating' });
export type Rating = Read<typeof rating>;

export const agencyKind = z
  .enum(['mechanic', 'repairman', 'repair-station', 'manufacturer', 'carrier', 'pilot'])
  .meta({ id: 'AgencyKind' });

/** Who did or signed a piece of work, with the ratings held on that day. */
export const agency = z
  .object({ kind: agencyKind, name: shortText, certificate: shortText.nullable(), ratings: z.array(rating).nullable() })
  .meta({ id: 'Agency' });
export type Agency = Read<typeof agency>;

/** Who stated a list to be complete, and for which day. */
export const statement = z.object({ asOf: civilDate, by: shortText }).meta({ id: 'Statement' });
export type Statement = Read<typeof statement>;

/** Reference to a document of the aircraft or of the shop. */
export const documentRef = z
  .object({ title: shortText, revision: shortText.nullable(), date: civilDate.nullable() })
  .meta({ id: 'DocumentRef' });
export type DocumentRef = Read<typeof documentRef>;
