import type { Dossier } from '../dossier/dossier.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import { instantOf, minutesOf, minutesPerDay } from '../time/instant.js';
import type { MeterId } from '../verdict/clause.js';
import type { MeterAt } from '../verdict/evaluate.js';

/** House policy where the aircraft states none: a reading older than this cannot carry a limit in hours. */
export const defaultReadingGoodForDays = 31;
/** A meter read more than this before the latest reading was not read with the others: hours flown between are unknown. */
const readTogetherMinutes = minutesPerDay;

/**
 * What each meter shows after `hoursAhead` flight hours since the latest reading, rounded up, so that no limit is reached late.
 * `assumeRead`: as if meters will be read in time; for looking ahead, never for a verdict of today.
 */
export function metersAt(
  dossier: Pick<Dossier, 'meters'>,
  hoursAhead: Centihours,
  assumeRead = false,
): Readonly<Record<MeterId, MeterAt>> {
  const { definitions, readings } = dossier.meters;
  const latest = latestReading(dossier);
  const found: Record<MeterId, MeterAt> = {};
  for (const { id, perFlightHour } of definitions) {
    const reading = readings[id];
    if (!reading || latest === null) continue;
    const together = minutesOf(latest) - minutesOf(reading.asOf) <= readTogetherMinutes;
    found[id] = {
      value: reading.value + Math.ceil((hoursAhead * perFlightHour) / 1000),
      goodBefore: !together ? null : assumeRead ? '9999-12-31T23:59Z' : goodBefore(dossier, reading.asOf),
    };
  }
  return found;
}

/** Instants at which readings grow too old. */
export function readingLimits(dossier: Pick<Dossier, 'meters'>): readonly Instant[] {
  return Object.values(dossier.meters.readings).map((each) => goodBefore(dossier, each.asOf));
}

/** Flight hours since the latest reading that may be flown while the meter stays at or under the limit; null: the meter stands still or was never read. */
export function hoursUntil(dossier: Pick<Dossier, 'meters'>, meter: MeterId, limit: Centihours): Centihours | null {
  const definition = dossier.meters.definitions.find((each) => each.id === meter);
  const reading = dossier.meters.readings[meter];
  if (!definition || !reading || definition.perFlightHour === 0) return null;
  return Math.floor(((limit - reading.value) * 1000) / definition.perFlightHour);
}

export function latestReading(dossier: Pick<Dossier, 'meters'>): Instant | null {
  return Object.values(dossier.meters.readings).reduce<Instant | null>(
    (latest, each) => (latest === null || each.asOf > latest ? each.asOf : latest),
    null,
  );
}

function goodBefore(dossier: Pick<Dossier, 'meters'>, asOf: Instant): Instant {
  const days = dossier.meters.utilisation.readingGoodForDays ?? defaultReadingGoodForDays;
  return instantOf(minutesOf(asOf) + days * minutesPerDay);
}
