import { z } from 'zod';
import type { Read } from '../catalogue/read.js';
import { id, shortText } from '../catalogue/words.js';
import { centihours, instant } from './common.js';

/**
 * Hour meters. Time in service is wheels-off to touchdown (14 CFR 1.1): the dossier says which meter stands for it.
 * `perFlightHour` is how far the meter moves in one flight hour, in thousandths (1000 = same pace).
 */
export const meterDefinition = z
  .object({
    id,
    name: shortText,
    kind: z
      // `elt-transmitter`: hours of transmitting on the battery in place (91.207(c)(1)). It stands still in flight and is shown on entries.
      .enum([
        'airframe',
        'tachometer',
        'hour-meter',
        'flight-log',
        'landings',
        'engine',
        'propeller',
        'elt-transmitter',
      ])
      .meta({ id: 'MeterKind' }),
    perFlightHour: z.int().min(0).max(5000),
    /** Added to what the dial shows, after a meter was replaced. May be negative. */
    offset: z.int(),
  })
  .meta({ id: 'MeterDefinition' });
export type MeterDefinition = Read<typeof meterDefinition>;

/** Latest reading, offset already added. */
export const meterReading = z.object({ value: centihours, asOf: instant, by: shortText }).meta({ id: 'MeterReading' });
export type MeterReading = Read<typeof meterReading>;

export const utilisation = z
  .object({ perMonth: centihours.nullable(), readingGoodForDays: z.int().min(1).max(3660).nullable() })
  .meta({ id: 'Utilisation' });
