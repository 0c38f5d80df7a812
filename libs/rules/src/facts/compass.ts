import type { Sourced } from './source.js';

/** Largest compensated deviation in level flight, any heading. */
export const compassDeviationDeg: Sourced<number> = {
  value: 10,
  source: { document: '14 CFR 23.1327', paragraph: '(a)', edition: 'before amendment 23-64', status: 'verified' },
};

/** Largest step between headings of the card: airplanes, and rotorcraft with transport airplanes. */
export const compassStepDeg: Sourced<number> = {
  value: 30,
  source: { document: '14 CFR 23.1547', paragraph: '(d)', edition: 'before amendment 23-64', status: 'verified' },
};
export const compassStepRotorcraftDeg: Sourced<number> = {
  value: 45,
  source: { document: '14 CFR 27.1547', paragraph: '(d)', edition: '2015', status: 'verified' },
};

/** Electric loads may cause more if a stabilized indicator is fitted and the placard names them. */
export const compassLoadsException: Sourced<'placard-names-loads'> = {
  value: 'placard-names-loads',
  source: {
    document: '14 CFR 23.1327, 23.1547',
    paragraph: '(b), (e)',
    edition: 'before amendment 23-64',
    status: 'verified',
  },
};

export type SwingCause =
  | 'ferrous-part-changed'
  | 'new-compass'
  | 'accuracy-doubted'
  | 'ferrous-metal-in-cockpit'
  | 'shock'
  | 'lightning'
  | 'electrical-system-changed'
  | 'magnetic-cargo'
  | 'large-change-of-latitude'
  | 'parked-over-a-year'
  | 'flux-valve-replaced';

/** Events after which a swing is practice. */
export const swingCauses: Sourced<readonly SwingCause[]> = {
  value: [
    'ferrous-part-changed',
    'new-compass',
    'accuracy-doubted',
    'ferrous-metal-in-cockpit',
    'shock',
    'lightning',
    'electrical-system-changed',
    'magnetic-cargo',
    'large-change-of-latitude',
    'parked-over-a-year',
    'flux-valve-replaced',
  ],
  source: { document: 'AC 43.13-1B', paragraph: '12-37a', edition: 'change 1', status: 'verified' },
};
