import type { Instant } from '../time/instant.js';
import { localTimeAt } from '../time/zones.js';

/** Dates are always written with the month's name: 3/12 means two days to two people. */
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** '2026-12-03' (or anything that starts so) to '3 Dec 2026'. What is not a date comes back as it is. */
export function dateWords(date: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(date);
  const month = months[Number(found?.[2]) - 1];
  return found && month ? `${Number(found[3])} ${month} ${found[1]}` : date;
}

/** '2026-12-03T14:05' to '3 Dec 2026 14:05'. The zone is the caller's business: write it beside. */
export function dateTimeWords(local: string): string {
  const time = /T(\d{2}:\d{2})/.exec(local)?.[1];
  return time ? `${dateWords(local)} ${time}` : dateWords(local);
}

/** An instant as calendar and clock in the zone show it. The start of a day is that day. Throws `TimeError` for what is no instant or zone. */
export function whenWords(instant: Instant, zone: string): string {
  return dateTimeWords(localTimeAt(instant, zone)).replace(/ 00:00$/, '');
}
