/** Words for dates, hours and lists. Dates are always written with the month's name: 3/12 means two days to two people. */

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

/** Hundredths of an hour to '12.4 h'; a second decimal only where it says something. */
export function hoursWords(centihours: number): string {
  const text = (centihours / 100).toFixed(2);
  return `${text.endsWith('0') ? text.slice(0, -1) : text} h`;
}

/** 'a', 'a and b', 'a, b and c'. */
export function listWords(items: readonly string[], join = 'and'): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${join} ${items[items.length - 1]}`;
}

/** '1 finding', '2 findings'. */
export function countWords(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** 'altitude-reporting' or 'STOPS_AIRCRAFT' to 'Altitude reporting': for ids that nothing closer names. */
export function idWords(id: string): string {
  const plain = id.replace(/[-_]+/g, ' ').trim().toLowerCase();
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

/** A sentence with the dates in it written out: '2026-12-03' to '3 Dec 2026'. */
export function withDates(text: string): string {
  return text.replace(/\b\d{4}-\d{2}-\d{2}\b(?!T)/g, (date) => dateWords(date));
}
