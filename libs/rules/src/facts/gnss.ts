import type { Sourced, SourceRef } from './source.js';

const manual: SourceRef = {
  document: 'Aeronautical Information Manual',
  paragraph: '1-1-17, table of TSO-C129 classes',
  edition: '9 Jul 2026',
  status: 'verified',
};

export interface C129Class {
  readonly oceanic: true;
  readonly enRoute: true;
  readonly terminal: true;
  readonly nonPrecisionApproach: boolean;
  /** Where integrity is watched: in the receiver or by the system it feeds. */
  readonly raim: 'receiver' | 'integrated-system';
  /** The text of 1-1-17 b.3(b) names only some classes for domestic en route; for the rest the table and the text disagree. */
  readonly enRouteNamedByText: boolean;
}

function c129(nonPrecisionApproach: boolean, raim: C129Class['raim']): C129Class {
  return {
    oceanic: true,
    enRoute: true,
    terminal: true,
    nonPrecisionApproach,
    raim,
    enRouteNamedByText: nonPrecisionApproach,
  };
}

/** Classes of TSO-C129. */
export const c129Classes: Sourced<Readonly<Record<string, C129Class>>> = {
  source: manual,
  value: {
    A1: c129(true, 'receiver'),
    A2: c129(false, 'receiver'),
    B1: c129(true, 'receiver'),
    B2: c129(false, 'receiver'),
    B3: c129(true, 'integrated-system'),
    B4: c129(false, 'integrated-system'),
    C1: c129(true, 'receiver'),
    C2: c129(false, 'receiver'),
    C3: c129(true, 'integrated-system'),
    C4: c129(false, 'integrated-system'),
  },
};

export type ApproachMinima = 'lnav' | 'lnav-vnav' | 'lp' | 'lpv';

/** Operational classes of TSO-C145 and C146: the approaches each may fly. LP also depends on the TSO letter, see `lpFromLetter`. */
export const sbasOperationalClasses: Readonly<
  Record<'1' | '2' | '3' | '4', Sourced<{ readonly enRoute: boolean; readonly approaches: readonly ApproachMinima[] }>>
> = {
  '1': { value: { enRoute: true, approaches: ['lnav'] }, source: operationalClass('from-memory') },
  '2': { value: { enRoute: true, approaches: ['lnav', 'lnav-vnav'] }, source: operationalClass('secondary') },
  '3': {
    value: { enRoute: true, approaches: ['lnav', 'lnav-vnav', 'lp', 'lpv'] },
    source: operationalClass('secondary'),
  },
  // Class 4 belongs to approach guidance alone (functional class Delta): it steers no en-route leg.
  '4': { value: { enRoute: false, approaches: ['lnav-vnav', 'lpv'] }, source: operationalClass('secondary') },
};

/** LP needs C145b or C146b or later, or an upgrade, and a statement in the manual supplement. */
export const lpFromLetter: Sourced<'b'> = { value: 'b', source: { ...manual, paragraph: '1-1-18, LP minima' } };

/** TSO-C196: satellite sensor without augmentation, approach and departure as the C129 approach classes; another means must be fitted. */
export const c196: Sourced<{ readonly enRoute: true; readonly approaches: readonly ApproachMinima[] }> = {
  value: { enRoute: true, approaches: ['lnav'] },
  source: { ...manual, paragraph: '1-1-17 b.3' },
};

/** C129 and C196 need another approved means of navigation fitted and working; C145 and C146 do not, inside coverage. */
export const needsOtherMeans: Sourced<Readonly<Record<'C129' | 'C196' | 'C145' | 'C146', boolean>>> = {
  value: { C129: true, C196: true, C145: false, C146: false },
  source: { ...manual, paragraph: '1-1-17 b.2, 1-1-18' },
};

/** The issue of 9 July 2026 names no classes any more; a copy of an earlier one does. */
function operationalClass(status: SourceRef['status']): SourceRef {
  return {
    document: 'Aeronautical Information Manual',
    paragraph: 'wide area augmentation, operational classes',
    edition: 'a copy of May 2010',
    status,
  };
}
