import { readLargeWire, wireSizeWords } from '@tallywing/rules';

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

export function numberText(value: unknown): string {
  return value === null || value === undefined ? '' : String(value);
}

/** A wire gauge: a number, or 1/0 to 4/0 for what is larger than 1. */
export function readGauge(text: string): number | string | null {
  return readLargeWire(text) ?? readNumber(text);
}

export function gaugeText(value: unknown): string {
  return typeof value === 'number' ? wireSizeWords(value) : numberText(value);
}
