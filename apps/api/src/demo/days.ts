import { databaseCycleAt } from '@tallywing/rules';

/** The demo counts from the day it is seeded, so that it never goes stale. All in UTC; a base's own zone moves nothing by more than a day. */
export class Days {
  /** @param today the civil day of seeding, YYYY-MM-DD */
  constructor(readonly today: string) {}

  /** So many days ago; negative: to come. */
  ago(days: number): string {
    const date = new Date(`${this.today}T00:00:00Z`);
    date.setUTCDate(date.getUTCDate() - days);
    return date.toISOString().slice(0, 10);
  }

  /** So many calendar months ago, on a given day of that month. */
  monthsAgo(months: number, day: number): string {
    const date = new Date(`${this.today.slice(0, 7)}-01T00:00:00Z`);
    date.setUTCMonth(date.getUTCMonth() - months);
    return `${date.toISOString().slice(0, 7)}-${String(day).padStart(2, '0')}`;
  }

  /** The data cycle in force today (0), the one before (-1), the next (1). */
  cycle(offset: number): { id: string; effective: string; expires: string } {
    const now = databaseCycleAt(`${this.ago(-28 * offset)}T12:00Z`);
    return { id: now.id, effective: `${now.effective}T09:01Z`, expires: `${now.next}T09:01Z` };
  }
}
