import type { SourceRef, SourceStatus } from '../facts/source.js';

/** Editions in which the texts were read. */
const cfrEdition = 'eCFR title 14, issue of 2026-08-24';
const aimEdition = 'effective 2026-07-09';

/** A section of 14 CFR, for example `cfr('91.411(a)(1)')`. */
export function cfr(paragraph: string, status: SourceStatus = 'verified'): SourceRef {
  return { document: '14 CFR', paragraph, edition: cfrEdition, status };
}

/** A paragraph of the Aeronautical Information Manual. */
export function aim(paragraph: string, status: SourceStatus = 'verified'): SourceRef {
  return { document: 'AIM', paragraph, edition: aimEdition, status };
}

/** An advisory circular with its revision letter, for example `ac('43.13-1B', '12-37', 'change 1')`. */
export function ac(number: string, paragraph: string, edition: string, status: SourceStatus = 'verified'): SourceRef {
  return { document: `AC ${number}`, paragraph, edition, status };
}

/** Our reading of a text that leaves a question open. */
export function reading(document: string, paragraph: string): SourceRef {
  return { document, paragraph, edition: cfrEdition, status: 'reading' };
}

/** Trade practice without a published source. */
export function practice(what: string): SourceRef {
  return { document: 'common practice', paragraph: what, edition: '', status: 'common-practice' };
}

/** What the maker or the approval of this very installation says: the record names the document. */
export function maker(document: string, paragraph: string): SourceRef {
  return { document, paragraph, edition: '', status: 'maker' };
}
