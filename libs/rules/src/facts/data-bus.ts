import type { Sourced } from './source.js';

/** Receivers that one transmitter of a differential data bus may drive; one transmitter a bus. */
export const arinc429Receivers: Sourced<number> = {
  value: 20,
  source: {
    document: 'ARINC 429',
    paragraph: 'part 1, electrical characteristics',
    edition: '',
    status: 'from-memory',
  },
};
