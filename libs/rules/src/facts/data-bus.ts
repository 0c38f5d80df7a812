import type { Sourced } from './source.js';

/** Receivers that one transmitter of a differential data bus may drive; one transmitter a bus. */
export const arinc429Receivers: Sourced<number> = {
  value: 20,
  source: {
    document: 'ARINC 429',
    paragraph: 'part 1, as its editor sums it up in a handbook of avionics',
    edition: 'abstract of the chapter',
    status: 'secondary',
  },
};

/** The two speeds of the bus, in bits a second. All speeds between the ends of one are that speed: each receiver takes any of them. */
export const arinc429Speeds: Sourced<
  Readonly<Record<'low' | 'high', { readonly least: number; readonly most: number }>>
> = {
  value: { low: { least: 12_000, most: 14_500 }, high: { least: 99_000, most: 101_000 } },
  source: { document: 'ARINC 429', paragraph: 'part 1, bit rates', edition: 'all', status: 'from-memory' },
};

/** Bits of a word, the first sent as bit 1: label, source or destination, data, sign and status; bit 32 makes the number of ones odd. */
export const arinc429Word: Sourced<
  Readonly<Record<'sdi' | 'data' | 'ssm', { readonly fromBit: number; readonly bits: number }>>
> = {
  value: { sdi: { fromBit: 9, bits: 2 }, data: { fromBit: 11, bits: 19 }, ssm: { fromBit: 30, bits: 2 } },
  source: {
    document: 'ARINC 429',
    paragraph: 'word format, as two open-source libraries document it',
    edition: 'arinc_429 0.1.3',
    status: 'secondary',
  },
};
