/**
 * What a person typed in a number field: a number, null for nothing, or the text itself where it is no number. The text
 * goes into the form's value as it is, so that the core's own check refuses it and names the field.
 */
export function readNumber(text: string): number | string | null {
  const plain = text
    .trim()
    .replace(/^\+/, '')
    .replace(/\u2212/g, '-');
  if (plain === '') return null;
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : text;
}

/** Decimal hours to whole hundredths. More than two decimals is not an hour reading: the text is kept and refused. */
export function readHours(text: string): number | string | null {
  const plain = text.trim();
  if (plain === '') return null;
  const found = /^(\d{1,6})(?:\.(\d{0,2}))?$/.exec(plain);
  return found ? Number(found[1]) * 100 + Number((found[2] ?? '').padEnd(2, '0')) : text;
}

export function numberText(value: unknown): string {
  return value === null || value === undefined ? '' : String(value);
}

export function hoursText(value: unknown): string {
  if (typeof value !== 'number') return numberText(value);
  const text = (value / 100).toFixed(2);
  return text.endsWith('0') ? text.slice(0, -1) : text;
}
