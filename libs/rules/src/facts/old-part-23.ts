import type { Sourced, SourceRef } from './source.js';

/** A paragraph of part 23 as it stood before amendment 23-64 rewrote the part. */
export function oldPart23(section: string, paragraph: string): SourceRef {
  return { document: `14 CFR ${section}`, paragraph, edition: 'before amendment 23-64', status: 'verified' };
}

/** First amendment that has the paragraph. The text read is that of the last edition; when each paragraph came in is known from memory. */
function since(amendment: number, section: string, paragraph: string): Sourced<number> {
  return {
    value: amendment,
    source: { ...oldPart23(section, `${paragraph}, first amendment with it`), status: 'from-memory' },
  };
}

/** The amendment that replaced the paragraphs by other words. */
export const rewrittenByAmendment: Sourced<number> = {
  value: 64,
  source: { document: '14 CFR part 23', paragraph: 'amendment 23-64', edition: '2017', status: 'verified' },
};
/** The source note of the section begins with the amendment that brought it in. */
export const colouredLightsSince: Sourced<number> = {
  value: 17,
  source: {
    document: '14 CFR 23.1322',
    paragraph: 'source note: amendment 23-17, 41 FR 55465',
    edition: '20 Dec 1976',
    status: 'verified',
  },
};
export const cabinMassItemsSince = since(36, '23.561', '(b)(3)');
export const batteryHalfHourSince = since(49, '23.1353', '(h)');
export const batteryByAltitudeSince: Sourced<number> = {
  value: 62,
  source: { document: '14 CFR 23.1353', paragraph: '(h)', edition: 'amendment 23-62 (2011)', status: 'verified' },
};
/** A basis with it was certificated after 11 March 1996: the amendment came into force on that day. */
export const certificatedAfter1996Since: Sourced<number> = {
  value: 49,
  source: {
    document: '14 CFR part 23',
    paragraph: 'amendment 23-49, in force on 11 March 1996',
    edition: 'before amendment 23-64',
    status: 'from-memory',
  },
};
/** Since the part began. */
export const partItself = since(0, 'part 23', 'the part');
export const ownProtectorSince = since(0, '23.1357', '(b)');
/** Of fuses that can be replaced in flight: the share of each rating to be carried as spares, and no less than so many. */
export const spareFuseShare: Sourced<{ readonly share: number; readonly least: number }> = {
  value: { share: 0.5, least: 1 },
  source: oldPart23('23.1357', '(e)'),
};
/** Minutes of safe flight under visual rules with the normal electrical power gone. */
export const visualAfterPowerLoss: Sourced<number> = { value: 5, source: oldPart23('23.1351', '(g)') };
/** Where the instruments of the basic T stand about the one of attitude, at the top and in the middle. */
export const basicT: Sourced<Readonly<Record<'airspeed' | 'altitude' | 'direction', 'left' | 'right' | 'below'>>> = {
  value: { airspeed: 'left', altitude: 'right', direction: 'below' },
  source: oldPart23('23.1321', '(d)'),
};
