/** A value that holds from a day on (`YYYY-MM-DD`, inclusive) until the next edition. */
export interface Edition<T> {
  readonly from: string;
  readonly value: T;
}

/**
 * The edition in force on a day: the latest that began on or before it, or the earliest known one for days before all.
 * Editions are listed in the order of their dates.
 */
export function inForce<T>(editions: readonly [Edition<T>, ...Edition<T>[]], day: string): Edition<T> {
  let current = editions[0];
  for (const edition of editions) if (edition.from <= day) current = edition;
  return current;
}
