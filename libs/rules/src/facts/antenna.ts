import type { Sourced } from './source.js';

/** Inches between an antenna for satellites and one that transmits for communication. A working rule; a manual's figure goes first. */
export const gnssFromComIn: Sourced<number> = {
  value: 36,
  source: {
    document: 'AC 20-138D',
    paragraph: 'place of the antenna, working rule of 3 ft',
    edition: 'change 2, 7 Apr 2016',
    status: 'from-memory',
  },
};

/** Drag of a streamlined antenna in pounds: this times frontal area in square feet times the square of the never-exceed speed in miles an hour. */
export const antennaDragFactor: Sourced<number> = {
  value: 0.000327,
  source: { document: 'AC 43.13-2B', paragraph: 'chapter 3, antenna drag', edition: '2008', status: 'from-memory' },
};
