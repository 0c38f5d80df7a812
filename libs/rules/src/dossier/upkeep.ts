import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { id, note, shortText } from '../catalogue/words.js';
import { agency, centihours, civilDate, documentRef, instant, statement } from './common.js';
import { combine, intervalPart, recurrence } from './recurrence.js';

/** What an ADS-B Out transmitter sends of itself. `id` is the transmitting unit. 91.227(d). */
export const identity = z
  .object({
    id,
    /** 24-bit address, six hexadecimal digits. */
    address: z
      .string()
      .regex(/^[0-9A-F]{6}$/, 'use six digits 0 to 9, A to F')
      .nullable(),
    flightId: z
      .string()
      .regex(/^[A-Z0-9]{1,8}$/, 'use 1 to 8 capital letters and digits')
      .nullable(),
    /** Light: less than 15,500 lb; small: to 75,000 lb; large: above. */
    emitterCategory: z
      .enum(['light', 'small', 'large', 'rotorcraft', 'glider', 'other'])
      .nullable()
      .meta({ id: 'EmitterCategory' }),
    /** Unit that gives the position, and the document that shows the two to be an approved pair. */
    positionUnit: id.nullable(),
    pairing: documentRef.nullable(),
    seen: statement.nullable(),
  })
  .meta({ id: 'AdsbIdentity' });
export type Identity = Read<typeof identity>;

/** Something that recurs on this aircraft: from instructions for continued airworthiness, its limitations section, or of the owner's own. */
export const recurringItem = z
  .object({
    id,
    name: shortText,
    subject: id,
    origin: z.enum(['airworthiness-limitation', 'continued-airworthiness', 'own']).meta({ id: 'RecurringOrigin' }),
    document: documentRef.nullable(),
    ...recurrence.shape,
  })
  .meta({ id: 'RecurringItem' });
export type RecurringItem = Read<typeof recurringItem>;

/** A part that must be retired: mandatory where the limitations section says so (91.403(c), 43.16). */
export const lifeLimit = z
  .object({
    id,
    name: shortText,
    serial: shortText.nullable(),
    subject: id,
    mandatory: z.boolean().nullable(),
    document: documentRef.nullable(),
    /** The life as its document gives it, and where it began. Null: only the point is stated. */
    life: z
      .object({
        parts: z.array(intervalPart).min(1).max(4),
        combine,
        /** Day from which a calendar life runs: made, cured or first fitted, as the document says. */
        from: civilDate.nullable(),
        /** Where each meter stood when the part was fitted, and what the part had behind it then. */
        meters: z.array(
          z.object({ meter: id, at: centihours.nullable(), used: centihours.nullable() }).meta({ id: 'LifeMeter' }),
        ),
      })
      .nullable()
      .meta({ id: 'Life' }),
    /** As stated by somebody. `by` says which parts are asked, `first` the earlier of both: a part asked and null is not recorded. */
    retireBy: z
      .object({
        by: z.enum(['date', 'meter', 'first']).meta({ id: 'RetireBy' }),
        date: civilDate.nullable(),
        meter: id.nullable(),
        at: centihours.nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'LifeLimit' });
export type LifeLimit = Read<typeof lifeLimit>;

/** Papers that must be aboard or in force (91.203, 91.9(b)). */
export const paper = z
  .object({
    id,
    kind: z
      .enum(['registration', 'airworthiness-certificate', 'flight-manual', 'operating-limitations', 'radio-licence'])
      .meta({ id: 'PaperKind' }),
    number: shortText.nullable(),
    aboard: z.boolean().nullable(),
    expires: civilDate.nullable(),
    seen: statement.nullable(),
  })
  .meta({ id: 'Paper' });
export type Paper = Read<typeof paper>;

/** The documents of one installation, each with the place where it is; null: nobody looked. */
export const packPart = z
  .object({
    part: z
      .enum([
        'release-entry',
        'alteration-form',
        'supplement',
        'continued-airworthiness',
        'stc-permission',
        'wiring-diagram',
        'equipment-list',
        'mass-and-balance',
      ])
      .meta({ id: 'PackPartKind' }),
    place: z
      .enum(['aboard', 'in-records', 'with-owner', 'sent', 'missing', 'not-needed'])
      .nullable()
      .meta({ id: 'PackPlace' }),
    on: civilDate.nullable(),
  })
  .meta({ id: 'PackPart' });
export type PackPart = Read<typeof packPart>;
export const documentPack = z
  .object({ id, unitId: id, parts: z.array(packPart).max(20), handOver: statement.nullable() })
  .meta({ id: 'DocumentPack' });
export type DocumentPack = Read<typeof documentPack>;

/** A decision that nobody may compute, by a named certificated person with reasons. */
export const decision = z
  .object({
    id,
    question: z
      .enum(['major-or-minor', 'correspondence-after-reracking', 'compass-authority'])
      .meta({ id: 'DecisionQuestion' }),
    subject: id,
    answer: z.enum(['major', 'minor', 'required', 'not-required', 'accepted']).meta({ id: 'DecisionAnswer' }),
    reasons: note,
    by: agency,
    on: civilDate,
    /** Major alterations: the form executed before release, the copy sent within 48 hours after it (part 43 appendix B). */
    form: z
      .object({ executed: civilDate.nullable(), releasedAt: instant.nullable(), copySentAt: instant.nullable() })
      .nullable(),
  })
  .meta({ id: 'Decision' });
export type Decision = Read<typeof decision>;
