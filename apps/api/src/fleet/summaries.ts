import type { MessageWords } from '@tallywing/rules';

/** Columns of an aircraft as lists show it; `a` is the aircraft. */
export const summaryColumns = `a.id as aircraft_id, a.registration, a.make, a.model, a.operator_id, o.name as operator_name,
  a.base_id, b.name as base_name, b.zone as base_zone, a.revision, a.rules_version, a.zones_version, a.profiles_hash`;

export const summaryJoins = `left join operators o on o.organisation_id = a.organisation_id and o.id = a.operator_id
  left join bases b on b.organisation_id = a.organisation_id and b.id = a.base_id`;

export interface SummaryRow {
  readonly aircraft_id: string;
  readonly registration: string;
  readonly make: string;
  readonly model: string;
  readonly operator_id: string | null;
  readonly operator_name: string | null;
  readonly base_id: string | null;
  readonly base_name: string | null;
  readonly base_zone: string | null;
  readonly revision: number;
  readonly rules_version: string;
  readonly zones_version: string;
  readonly profiles_hash: string;
  readonly [column: string]: unknown;
}

export interface AircraftSummary {
  readonly id: string;
  readonly registration: string;
  readonly make: string;
  readonly model: string;
  readonly operator: { readonly id: string; readonly name: string } | null;
  readonly base: { readonly id: string; readonly name: string; readonly zone: string };
}

/** Rows of an aircraft hold names already. */
export function wordsFor(row: Pick<SummaryRow, 'base_zone'>): MessageWords {
  return { zone: row.base_zone ?? 'UTC', names: {} };
}

export function summaryOf(row: SummaryRow): AircraftSummary {
  return {
    id: row.aircraft_id,
    registration: row.registration,
    make: row.make,
    model: row.model,
    operator: row.operator_id === null ? null : { id: row.operator_id, name: row.operator_name ?? row.operator_id },
    base: { id: row.base_id ?? 'none', name: row.base_name ?? 'not recorded', zone: row.base_zone ?? 'UTC' },
  };
}
