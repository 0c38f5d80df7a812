/** How well a value is known. The order, best first, is `sourceStatuses`; the weakest source behind a yes is shown with it. */
export type SourceStatus =
  'verified' | 'secondary' | 'maker' | 'house-policy' | 'reading' | 'common-practice' | 'from-memory';

/** Every status from the best known to the least, for comparing. */
export const sourceStatuses: readonly SourceStatus[] = [
  'verified',
  'secondary',
  'maker',
  'house-policy',
  'reading',
  'common-practice',
  'from-memory',
];

/** Where a value stands. Plain data: survives JSON. */
export interface SourceRef {
  readonly document: string;
  readonly paragraph: string;
  readonly edition: string;
  readonly status: SourceStatus;
}

/** The less certain of two statuses. */
export function weakerStatus(a: SourceStatus, b: SourceStatus): SourceStatus {
  return sourceStatuses.indexOf(a) >= sourceStatuses.indexOf(b) ? a : b;
}

/** A published value with the place it stands in. Units are in the name of the constant or of the field. */
export interface Sourced<T> {
  readonly value: T;
  readonly source: SourceRef;
}
