import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { id } from '../catalogue/words.js';

/** One interval. Hours count in whole hundredths of the meter named, landings as they are. */
export const intervalPart = z
  .object({
    kind: z.enum(['calendar-months', 'anniversary-months', 'days', 'hours', 'landings']).meta({ id: 'IntervalKind' }),
    count: z.int().positive().max(10_000_000),
    meter: id.nullable(),
    tolerance: z.int().min(0).max(10_000_000).nullable(),
  })
  .meta({ id: 'IntervalPart' });

/** Whichever of the intervals comes first, or whichever comes last. */
export const combine = z.enum(['first', 'last']).meta({ id: 'Combine' });

/** What the one recurrence engine needs, as it stands in a directive, a limitations section or a house's own list. */
export const recurrence = z
  .object({
    parts: z.array(intervalPart).min(1).max(4),
    combine,
    countFrom: z.enum(['done', 'due', 'earlier']).meta({ id: 'CountFrom' }),
    toleranceFor: z.enum(['none', 'en-route', 'any']).meta({ id: 'ToleranceFor' }),
  })
  .meta({ id: 'Recurrence' });
export type RecordedRecurrence = Read<typeof recurrence>;
