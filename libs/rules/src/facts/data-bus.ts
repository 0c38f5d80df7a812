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
