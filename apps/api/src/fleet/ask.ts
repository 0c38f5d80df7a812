import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { badInput } from '../common/errors.js';
import type { Actor } from '../identity/access.js';

/** A moment with the flight hours flown by its end, as the read tables are asked: whole hundredths of an hour. */
export interface Moment {
  readonly from: string;
  /** End of the flight: the verdict must hold through it. */
  readonly to: string;
  readonly hours: number;
}

const MOST_HOURS = 10_000;

/** @throws AppError BAD_INPUT naming hoursAhead */
export function readMoment(clock: Clock, at: string | null | undefined, hoursAhead: number | null | undefined): Moment {
  const hours = Math.round((hoursAhead ?? 0) * 100);
  if (!Number.isFinite(hours) || hours < 0 || hours > MOST_HOURS * 100) {
    throw badInput(
      'hoursAhead',
      `Flight hours ahead are 0 to ${MOST_HOURS}.`,
      'Give the hours of the flight, such as 2.5.',
    );
  }
  const from = at ?? instantOf(clock.now());
  const end = new Date(Date.parse(`${from.slice(0, 16)}:00Z`) + hours * 36_000);
  return { from, to: instantOf(end), hours };
}

export interface AircraftFilter {
  readonly operatorId?: string | null;
  readonly baseId?: string | null;
  readonly text?: string | null;
  readonly aircraftId?: string | null;
  readonly ready?: readonly string[] | null;
}

/** Conditions on `a` (aircraft), with this actor's own limits always among them. */
export function aircraftConditions(
  actor: Actor,
  filter: AircraftFilter | null | undefined,
  add: (value: unknown) => string,
): string {
  const conditions = [`a.organisation_id = ${add(actor.organisationId)}`];
  if (actor.operatorId !== undefined) conditions.push(`a.operator_id = ${add(actor.operatorId)}`);
  if (filter?.operatorId) conditions.push(`a.operator_id = ${add(filter.operatorId)}`);
  if (filter?.baseId) conditions.push(`a.base_id = ${add(filter.baseId)}`);
  if (filter?.aircraftId) conditions.push(`a.id = ${add(filter.aircraftId)}`);
  if (filter?.text?.trim()) {
    const place = add(filter.text.trim().toLowerCase());
    conditions.push(`position(${place} in lower(a.registration || ' ' || a.make || ' ' || a.model)) > 0`);
  }
  return conditions.join(' and ');
}
