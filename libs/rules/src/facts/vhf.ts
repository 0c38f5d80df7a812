import type { Sourced } from './source.js';

/** Frequency of the GNSS signal that harmonics of a VHF transmitter can hit. */
export const l1MHz: Sourced<number> = {
  value: 1575.42,
  source: {
    document: 'Aeronautical Information Manual',
    paragraph: '1-1-18 a.3',
    edition: '9 Jul 2026',
    status: 'verified',
  },
};

/** Half the width of the coarse code around L1. */
export const l1HalfWidthMHz: Sourced<number> = {
  value: 1.023,
  source: {
    document: 'IS-GPS-200',
    paragraph: 'coarse code rate, as libraries quote it',
    edition: 'all',
    status: 'secondary',
  },
};

/** Where channel names begin and end (exclusive), MHz. The band itself begins at 117.975. */
export const vhfBandMHz: Sourced<{ readonly from: number; readonly to: number }> = {
  value: { from: 118, to: 137 },
  source: {
    document: 'ICAO Annex 10 volume V',
    paragraph: '4.1',
    edition: 'as quoted by a training page',
    status: 'secondary',
  },
};

export interface ChannelName {
  /** Last two digits and a half of the name: kHz above the tenth of a MHz. */
  readonly nameKHz: number;
  readonly spacingKHz: 25 | 8.33;
  /** Carrier above the tenth of a MHz, in twelfths of 100 kHz, so that 25/3 kHz stays exact. */
  readonly carrierTwelfths: number;
}

/** The sixteen names in each tenth of a MHz. Names ending .020, .045, .070 and .095 do not exist. */
export const channelNames: Sourced<readonly ChannelName[]> = {
  source: { document: 'ICAO Annex 10 volume V', paragraph: 'table 4-1 (bis)', edition: '2005', status: 'from-memory' },
  value: [0, 25, 50, 75].flatMap((base): ChannelName[] => {
    const twelfths = (base / 25) * 3;
    return [
      { nameKHz: base, spacingKHz: 25, carrierTwelfths: twelfths },
      { nameKHz: base + 5, spacingKHz: 8.33, carrierTwelfths: twelfths },
      { nameKHz: base + 10, spacingKHz: 8.33, carrierTwelfths: twelfths + 1 },
      { nameKHz: base + 15, spacingKHz: 8.33, carrierTwelfths: twelfths + 2 },
    ];
  }),
};

/** Frequencies to transmit on while watching the satellites. The pair for narrow channels is in doubt and left out. */
export const interferenceTestMHz: Sourced<readonly number[]> = {
  value: [121.15, 121.175, 121.2, 131.25, 131.275, 131.3],
  source: {
    document: 'AC 20-138D',
    paragraph: 'ground test, VHF interference',
    edition: 'change 2',
    status: 'from-memory',
  },
};

/** Navigation by VOR and localizer, MHz, in steps of 50 kHz. */
export const navBandMHz: Sourced<{ readonly from: number; readonly to: number }> = {
  value: { from: 108, to: 117.95 },
  source: { document: 'ICAO Annex 10 volume I', paragraph: '3.1.6.1, 3.3.2.1', edition: 'all', status: 'from-memory' },
};

/** Glide slope for each localizer on an odd tenth, MHz; the localizer 50 kHz above it has the glide slope 150 kHz below. */
export const glideSlopes: Sourced<readonly (readonly [localizerMHz: number, glideSlopeMHz: number])[]> = {
  source: { document: 'AIM', paragraph: '1-1-9 h, TBL 1-1-4', edition: '20 Apr 2023', status: 'verified' },
  value: [
    [108.1, 334.7],
    [108.3, 334.1],
    [108.5, 329.9],
    [108.7, 330.5],
    [108.9, 329.3],
    [109.1, 331.4],
    [109.3, 332],
    [109.5, 332.6],
    [109.7, 333.2],
    [109.9, 333.8],
    [110.1, 334.4],
    [110.3, 335],
    [110.5, 329.6],
    [110.7, 330.2],
    [110.9, 330.8],
    [111.1, 331.7],
    [111.3, 332.3],
    [111.5, 332.9],
    [111.7, 333.5],
    [111.9, 331.1],
  ],
};
