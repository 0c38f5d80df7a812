/** Decimal hours to whole hundredths. More than two decimals is not an hour reading: the text is kept and refused. */
export function readHours(text: string): number | string | null {
  const plain = text.trim();
  if (plain === '') return null;
  const found = /^(\d{1,6})(?:\.(\d{0,2}))?$/.exec(plain);
  return found ? Number(found[1]) * 100 + Number((found[2] ?? '').padEnd(2, '0')) : text;
}

/** The other way round; what is no number of hours comes back as it is. */
export function hoursText(value: unknown): string {
  if (typeof value !== 'number') return value === null || value === undefined ? '' : String(value);
  const text = (value / 100).toFixed(2);
  return text.endsWith('0') ? text.slice(0, -1) : text;
}
