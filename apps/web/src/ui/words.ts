/** Words for hours, lists and counts. */

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
