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
