import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { databaseKind } from '../catalogue/type.js';
import { id, note, shortText } from '../catalogue/words.js';
import { agency, centihours, civilDate, documentRef, evidenceGrade, instant, performed, statement } from './common.js';
import {
  altimeterReadings,
  bondingReadings,
  compassReadings,
  correspondenceReadings,
  interferenceReadings,
  staticLeakReadings,
  transponderReadings,
  vorReadings,
} from './readings.js';
import { recurrence } from './recurrence.js';

export const recordKind = z
  .enum([
    'annual-inspection',
    'airworthiness-certificate-inspection',
    'hundred-hour-inspection',
    'progressive-complete',
    'program-inspection',
    'condition-inspection',
    'static-system-test',
    'altimeter-test',
    'altitude-reporting-test',
    'transponder-test',
    'altitude-correspondence-test',
    'static-leak-test',
    'elt-inspection',
    'elt-battery',
    'elt-removal',
    'vor-check',
    'compass-swing',
    'bonding-check',
    'vhf-interference-check',
    'gnss-function-check',
    'ads-b-report',
    'controls-check',
    'release-entry',
    'pilot-flight-check',
    'data-verification',
    'directive-compliance',
    'own-item',
  ])
  .meta({ id: 'RecordKind' });
export type RecordKind = Read<typeof recordKind>;

/** Readings by kind; the ones that do not belong to the record stay null. */
export const readings = z
  .object({
    altimeter: altimeterReadings.nullable(),
    transponder: transponderReadings.nullable(),
    vor: vorReadings.nullable(),
    staticLeak: staticLeakReadings.nullable(),
    correspondence: correspondenceReadings.nullable(),
    compass: compassReadings.nullable(),
    bonding: bondingReadings.nullable(),
    interference: interferenceReadings.nullable(),
  })
  .meta({ id: 'Readings' });
export type Readings = Read<typeof readings>;

export const meterValue = z.object({ meter: id, value: centihours }).meta({ id: 'MeterValue' });

/** Head of one entry of the maintenance record: what the rules need of it. Long texts live in the history. */
export const recordHead = z
  .object({
    id,
    kind: recordKind,
    /** 'aircraft', a unit id, a static system id: the serial-numbered things that carry this clock. */
    subjects: z.array(id).min(1),
    done: performed,
    meters: z.array(meterValue),
    outcome: z.enum(['passed', 'failed', 'approved', 'disapproved']).nullable().meta({ id: 'RecordOutcome' }),
    /** Flown over the limit on the way to the place of inspection (91.409(b)). */
    enRoute: z.boolean().nullable(),
    /** Hours at which the inspection fell due, where it was done late. */
    dueAt: centihours.nullable(),
    evidence: evidenceGrade,
    entry: z.object({ book: shortText, page: shortText }).nullable(),
    agency: agency.nullable(),
    /** Second signature, for work that asks for it. */
    secondPerson: shortText.nullable(),
    /** The test set that the entry names; null: it names none. */
    instrument: z.object({ serial: shortText, calibratedUntil: civilDate.nullable() }).nullable(),
    document: documentRef.nullable(),
    testedToFt: z.int().min(-1000).max(60_000).nullable(),
    /** The altimeter carries the date and the highest altitude of its test (part 43 appendix E(d)). */
    marked: z.boolean().nullable(),
    place: shortText.nullable(),
    expires: civilDate.nullable(),
    readings: readings.nullable(),
    note: note.nullable(),
  })
  .meta({ id: 'RecordHead' });
export type RecordHead = Read<typeof recordHead>;

/** What a piece of work opened or touched. The person who records the work states it; tests follow from it. */
export const touched = z
  .enum([
    'static-system',
    'altitude-chain',
    'transponder',
    'gnss',
    'ads-b',
    'electrical',
    'ferrous',
    'behind-panel',
    'registration',
    'flight-characteristics',
    /** Said by name: an empty list says nothing at all. */
    'nothing',
  ])
  .meta({ id: 'Touched' });
export type Touched = Read<typeof touched>;

/** What work can call for: an entry of a kind, or first of all that somebody says what it touched. */
export const owedKind = z.enum([...recordKind.options, 'what-was-touched']);

/** A test or entry that a change called for, kept until an entry that counts closes it. */
export const obligation = z
  .object({
    id,
    what: owedKind,
    subject: id,
    since: performed,
    becauseOf: shortText,
    touched: touched.nullable(),
    closedBy: id.nullable(),
  })
  .meta({ id: 'Obligation' });
export type Obligation = Read<typeof obligation>;

export const deferral = z
  .object({
    route: z.enum(['91.213(d)', 'mel']).meta({ id: 'DeferralRoute' }),
    /** 91.213(d)(2): not required by type basis, equipment list, 91.205 or a directive. */
    notRequired: z.boolean().nullable(),
    /** 91.213(d)(3): removed, or deactivated and placarded, with the entry made. */
    secured: z.boolean().nullable(),
    placarded: z.boolean().nullable(),
    recorded: z.boolean().nullable(),
    /** 91.213(d)(4): the person who found no hazard. */
    noHazardBy: agency.nullable(),
    /** 91.213(a)(2): the letter of authorization and the minimum equipment list are aboard. Only `mel` asks. */
    letterAboard: z.boolean().nullable(),
    on: civilDate,
    /** Last re-evaluation at a required inspection (91.405(c)). */
    reinspectedOn: civilDate.nullable(),
  })
  .meta({ id: 'Deferral' });
export type Deferral = Read<typeof deferral>;

export const defect = z
  .object({
    id,
    kind: z.enum(['inoperative-item', 'discrepancy', 'wear']).meta({ id: 'DefectKind' }),
    /** Unit id, 91.205 item code, or 'aircraft'. */
    subject: id,
    text: note,
    raised: performed,
    /** Who decided what kind of defect it is; null: nobody yet. */
    decidedBy: agency.nullable(),
    deferral: deferral.nullable(),
  })
  .meta({ id: 'Defect' });
export type Defect = Read<typeof defect>;

export const databaseSlot = z.enum(['this', 'next']).meta({ id: 'DatabaseSlot' });

/** What the provider of the data warns of: a procedure or a waypoint that is not to be flown by them. */
export const dataNotice = z
  .object({ on: z.enum(['procedure', 'waypoint']).meta({ id: 'DataNoticeOn' }), against: shortText })
  .meta({ id: 'DataNotice' });

export const databaseLoad = z
  .object({
    unitId: id,
    database: databaseKind,
    slot: databaseSlot,
    cycle: z
      .string()
      .regex(/^\d{4}$/, 'four digits, year and number of the cycle')
      .nullable(),
    effective: instant.nullable(),
    /** Printed by the provider; wins over the computed end of the cycle. */
    expires: instant.nullable(),
    loaded: performed,
    /** 43.3(k): from the flight deck, no disassembly, no tools. Null: not asked. */
    fromFlightDeck: z.boolean().nullable(),
    /** Regions that the data cover, as the provider calls them; null: not recorded. */
    coverage: z.array(shortText).max(40).nullable(),
    notices: z.array(dataNotice).max(40),
  })
  .meta({ id: 'DatabaseLoad' });
export type DatabaseLoad = Read<typeof databaseLoad>;

export const directive = z
  .object({
    id,
    number: shortText,
    subject: id,
    /** What it was looked up for or done on; null: whatever the subject names. */
    partNumber: shortText.nullable(),
    serial: shortText.nullable(),
    state: z.enum(['complied', 'not-applicable', 'open']).meta({ id: 'DirectiveState' }),
    reason: note.nullable(),
    method: shortText.nullable(),
    /** Done once, or again and again; null: nobody read it up. */
    recurs: z.boolean().nullable(),
    /** How often, counted from its entries by the recurrence engine. Null: only the next point is stated. */
    interval: recurrence.nullable(),
    /**
     * As stated with the entry named: next due, or for an open one first due, null before further flight. Beside an interval the earlier
     * of both decides. `by` says which parts are asked: a part asked and null is not recorded.
     */
    nextDue: z
      .object({
        by: z.enum(['date', 'meter', 'first', 'last']).meta({ id: 'DirectiveDueBy' }),
        date: civilDate.nullable(),
        meter: id.nullable(),
        at: centihours.nullable(),
      })
      .nullable(),
    recordId: id.nullable(),
  })
  .meta({ id: 'Directive' });
export type Directive = Read<typeof directive>;

export const hold = z
  .object({ id, reason: note, by: shortText, from: instant, until: instant.nullable() })
  .meta({ id: 'Hold' });
export type Hold = Read<typeof hold>;

/** A named person lets a result count that rests on a doubted source: the result of this rule on this subject. */
export const sayso = z
  .object({
    id,
    rule: id,
    subject: id,
    by: shortText,
    reason: note,
    from: instant,
    /** Exclusive. Nobody speaks for ever. */
    until: instant,
  })
  .meta({ id: 'SaySo' });
export type SaySo = Read<typeof sayso>;

export const listName = z
  .enum(['equipment', 'links', 'directives', 'defects', 'recurring', 'life-limits', 'placards'])
  .meta({ id: 'ListName' });
export type ListName = Read<typeof listName>;
export const completeness = z.object({ list: listName, stated: statement }).meta({ id: 'Completeness' });

export const staticSystem = z
  .object({ id, name: shortText, lastOpened: performed.nullable() })
  .meta({ id: 'StaticSystem' });
export type StaticSystem = Read<typeof staticSystem>;
