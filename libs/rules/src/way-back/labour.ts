import { z } from 'zod';
import type { SourceStatus } from '../facts/source.js';
import type { Read } from '../catalogue/read.js';
import type { RecordKind } from '../dossier/status.js';

/** A kind of work that the way back may propose. Kinds of entry carry the name of the entry. */
export type Job =
  | RecordKind
  | 'altitude-suite'
  | 'lift-hold'
  | 'load-database'
  | 'read-meters'
  | 'join-ports'
  | 'part-ports'
  | 'fit-antenna'
  | 'fit-placard'
  | 'file-supplement'
  | 'revise-weight-record'
  | 'weigh'
  | 'replace-part'
  | 'approve-installation'
  | 'adopt-as-found'
  | 'find-out'
  | 'deactivate-unit'
  | 'reactivate-unit'
  | 'repair-defect'
  | 'defer-defect'
  | 'fit-navigator'
  | 'replace-navigator'
  | 'fit-transponder'
  | 'replace-transponder'
  | 'fit-elt'
  | 'fit-com'
  | 'fit-indicator'
  | 'fit-audio'
  | 'replace-altimeter'
  | 'replace-encoder'
  | 'fit-other';

/** Person-hours of one job, and what is known of parts; null: the shop has entered none. */
export interface Labour {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  /** Price of parts in the house's currency. */
  readonly parts: number | null;
  readonly status: SourceStatus;
}

export interface LabourTable {
  /** Price of one person-hour in the house's currency; null: money is not counted. */
  readonly hourly: number | null;
  readonly jobs: Readonly<Record<Job, Labour>>;
}

const practice = (low: number, typical: number, high: number): Labour => ({
  low,
  typical,
  high,
  parts: null,
  status: 'common-practice',
});
/** Estimates of ours: no page or quotation stands behind them. */
const memory = (low: number, typical: number, high: number): Labour => ({
  ...practice(low, typical, high),
  status: 'from-memory',
});

/** Hours where the house has entered none of its own: trade figures, and estimates where the trade publishes none. */
export const defaultLabour: LabourTable = {
  hourly: null,
  jobs: {
    'annual-inspection': memory(10, 18, 40),
    'airworthiness-certificate-inspection': memory(8, 16, 40),
    'hundred-hour-inspection': memory(8, 14, 30),
    'progressive-complete': memory(8, 14, 30),
    'program-inspection': memory(8, 14, 30),
    'condition-inspection': memory(8, 14, 30),
    'static-system-test': memory(0.7, 1.2, 2),
    'altimeter-test': practice(0.5, 0.8, 1.5),
    'altitude-reporting-test': memory(0.5, 0.8, 1.5),
    'transponder-test': practice(0.8, 1.5, 2),
    'altitude-correspondence-test': memory(0.5, 0.8, 1.5),
    'altitude-suite': practice(2, 3, 4),
    'static-leak-test': practice(1, 3, 10),
    'elt-inspection': practice(0.5, 1, 1.5),
    'elt-battery': practice(0.5, 0.8, 1.5),
    'elt-removal': memory(0.5, 0.8, 1.5),
    'vor-check': practice(0.1, 0.2, 0.7),
    'compass-swing': practice(0.7, 1.5, 3),
    'bonding-check': memory(0.3, 0.5, 1),
    'vhf-interference-check': memory(0.5, 1, 2),
    'gnss-function-check': memory(0.5, 1, 2),
    'ads-b-report': practice(0.3, 0.5, 1),
    'controls-check': memory(0.2, 0.4, 1),
    'release-entry': memory(0.3, 0.5, 1),
    'pilot-flight-check': memory(0.8, 1.2, 2),
    'data-verification': memory(0.1, 0.2, 0.5),
    'directive-compliance': memory(1, 3, 12),
    'own-item': memory(0.3, 1, 4),
    'lift-hold': memory(0.1, 0.1, 0.3),
    'load-database': practice(0.2, 0.4, 1),
    'read-meters': memory(0.1, 0.1, 0.3),
    'join-ports': memory(1, 3, 6),
    'part-ports': memory(0.5, 1, 2),
    'fit-antenna': practice(4, 8, 16),
    'fit-placard': memory(0.1, 0.2, 0.5),
    'file-supplement': memory(0.3, 0.6, 2),
    'revise-weight-record': practice(0.5, 1, 2),
    weigh: practice(2, 3, 5),
    'replace-part': memory(1, 3, 8),
    'approve-installation': practice(6, 12, 40),
    'adopt-as-found': memory(0.5, 1, 3),
    'find-out': memory(0.2, 0.5, 2),
    'deactivate-unit': memory(0.3, 0.6, 1.5),
    'reactivate-unit': memory(0.3, 0.6, 1.5),
    'repair-defect': practice(2, 4, 12),
    'defer-defect': memory(0.3, 0.6, 1.5),
    'fit-navigator': practice(30, 45, 80),
    'replace-navigator': practice(16, 25, 40),
    'fit-transponder': practice(10, 16, 30),
    'replace-transponder': practice(2, 3, 5),
    'fit-elt': practice(4, 8, 14),
    'fit-com': practice(5, 12, 18),
    'fit-indicator': practice(2, 4, 8),
    'fit-audio': practice(8, 16, 30),
    'replace-altimeter': practice(1.5, 2.5, 4),
    'replace-encoder': practice(1.5, 2.5, 4),
    'fit-other': memory(5, 12, 30),
  },
};

const personHours = z.number().min(0).max(10_000);

/** Hours and prices that a house has entered for one job. */
export const ownLabour = z
  .object({
    low: personHours,
    typical: personHours,
    high: personHours,
    parts: z.number().min(0).max(10_000_000).nullable(),
  })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, {
    message: 'low is at most typical, and typical at most high',
    path: ['typical'],
  });

/** What a house has entered of its own; jobs left out keep the figures of the trade. */
export const houseLabour = z.object({
  hourly: z.number().positive().max(100_000).nullable(),
  /** Word or sign that stands beside every amount. */
  currency: z.string().trim().min(1).max(8).nullable(),
  jobs: z.partialRecord(z.enum(Object.keys(defaultLabour.jobs) as [Job, ...Job[]]), ownLabour),
});
export type HouseLabour = Read<typeof houseLabour>;

/** The table that the way back reckons with: the house's own figures over the usual ones. */
export function labourOf({ hourly, jobs }: Pick<HouseLabour, 'hourly' | 'jobs'>): LabourTable {
  const own = Object.entries(jobs).map(([job, figures]) => [job, { ...figures, status: 'house-policy' }] as const);
  return { hourly, jobs: { ...defaultLabour.jobs, ...Object.fromEntries(own) } };
}
