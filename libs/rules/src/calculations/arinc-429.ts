import { arinc429Speeds, arinc429Word } from '../facts/data-bus.js';
import { CalculationError, numberWithin } from './errors.js';

/**
 * A label as it stands in the first eight bits of a word: sent with its highest bit first, so the other way round than its number is
 * written. `label` is octal, 000 to 377. Throws `CalculationError` for anything else.
 */
export function arinc429LabelBits(label: string): number {
  if (!/^[0-3][0-7]{2}$/.test(label)) {
    throw new CalculationError('label', `${label} is no label. Give three octal digits from 000 to 377.`);
  }
  return Array.from({ length: 8 }, (_, bit) => ((parseInt(label, 8) >> bit) & 1) << (7 - bit)).reduce((a, b) => a | b);
}

/**
 * The 32 bits of a word as an unsigned number, bit 1 as the lowest. The last bit makes the number of ones odd.
 * Throws `CalculationError` where a part has more bits than its place, or is no whole number.
 */
export function arinc429WordOf(parts: {
  /** Three octal digits. */
  readonly label: string;
  readonly sdi: number;
  readonly data: number;
  readonly ssm: number;
}): number {
  const fields = (['sdi', 'data', 'ssm'] as const).map((name) => {
    const { fromBit, bits } = arinc429Word.value[name];
    const value = numberWithin(name, parts[name], 0, 2 ** bits - 1);
    if (!Number.isInteger(value)) throw new CalculationError(name, `${name} is ${value}. Give a whole number.`);
    return value * 2 ** (fromBit - 1);
  });
  const word = fields.reduce((sum, each) => sum + each, arinc429LabelBits(parts.label));
  const ones = word.toString(2).replaceAll('0', '').length;
  return ones % 2 === 1 ? word : word + 2 ** 31;
}

/** Which of the two speeds of the bus so many bits a second are; null: neither. */
export function arinc429SpeedOf(bitsPerS: number): 'low' | 'high' | null {
  const { low, high } = arinc429Speeds.value;
  if (bitsPerS >= low.least && bitsPerS <= low.most) return 'low';
  return bitsPerS >= high.least && bitsPerS <= high.most ? 'high' : null;
}
