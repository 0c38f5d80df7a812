import type { Policy } from '../catalogue/policy.js';
import { stretchesOf } from '../catalogue/policy.js';
import type { Dossier } from '../dossier/dossier.js';
import type { Centihours } from '../time/hours.js';
import type { Instant } from '../time/instant.js';
import { instantOf, minutesOf, minutesPerDay } from '../time/instant.js';
import type { MeterId } from '../verdict/clause.js';
import type { MeterAt } from '../verdict/evaluate.js';

/** Where neither the aircraft nor the house states any: a reading older than this cannot carry a limit in hours. */
const usualReadingDays = 31;
/** A meter read more than this before the latest reading was not read with the others: hours flown between are unknown. */
const readTogetherMinutes = minutesPerDay;

/**
 * What each meter shows after `hoursAhead` flight hours since the latest reading, rounded up, so that no limit is reached late.
 * `assumeRead`: as if meters will be read in time; for looking ahead, never for a verdict of today.
 * `house`: what the house's policy of that time lets a reading count, in days; null: it has set none.
 */
export function metersAt(
  dossier: Pick<Dossier, 'meters'>,
  hoursAhead: Centihours,
  assumeRead = false,
  house: number | null = null,
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
      goodBefore: !together ? null : assumeRead ? '9999-12-31T23:59Z' : goodBefore(dossier, reading.asOf, house),
    };
  }
  return found;
}

/** Instants at which readings grow too old, or begin to count again: their ends by every policy, and the days of the policies. */
export function readingLimits(
  dossier: Pick<Dossier, 'meters'>,
  policies: readonly Policy[] | undefined,
  zone: string,
): readonly Instant[] {
  const stretches = stretchesOf(policies, 'reading-age', zone);
  const counts = [null, ...stretches.map(({ policy }) => policy.body.days)];
  return [
    ...Object.values(dossier.meters.readings).flatMap(({ asOf }) =>
      counts.map((days) => goodBefore(dossier, asOf, days)),
    ),
    ...stretches.map(({ from }) => from),
  ];
}

/** The first instant from which a meter's last reading carries no limit any more; null: never read, or not with the others. */
export function readingEnds(
  dossier: Pick<Dossier, 'meters'>,
  meter: MeterId,
  policies: readonly Policy[] | undefined,
  zone: string,
): Instant | null {
  const { asOf } = dossier.meters.readings[meter] ?? {};
  if (asOf === undefined || metersAt(dossier, 0)[meter]?.goodBefore == null) return null;
  const stretches = stretchesOf(policies, 'reading-age', zone);
  const spans = [
    { from: asOf, before: stretches[0]?.from ?? null, days: null },
    ...stretches.map(({ from, before, policy }) => ({ from, before, days: policy.body.days })),
  ];
  for (const { from, before, days } of spans) {
    const end = goodBefore(dossier, asOf, days);
    const gone = end > from ? end : from;
    if (before === null || gone < before) return gone;
  }
  return null;
}

/** The days that the aircraft states, but never more than the house's policy; where nobody states any, the usual ones. */
export function readingGoodForDays({ meters }: Pick<Dossier, 'meters'>, house: number | null): number {
  const own = meters.utilisation.readingGoodForDays;
  if (house === null) return own ?? usualReadingDays;
  return Math.min(own ?? house, house);
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

function goodBefore(dossier: Pick<Dossier, 'meters'>, asOf: Instant, house: number | null): Instant {
  return instantOf(minutesOf(asOf) + readingGoodForDays(dossier, house) * minutesPerDay);
}
