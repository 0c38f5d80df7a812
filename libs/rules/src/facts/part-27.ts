import type { SourceRef, Sourced } from './source.js';

/** A paragraph of the standards for normal category rotorcraft. */
export function part27(section: string, paragraph: string, edition: string): SourceRef {
  return { document: `14 CFR ${section}`, paragraph, edition, status: 'verified' };
}

/** The source note of the section names no amendment but the one that brought it in. */
export const rotorcraftLightsSince: Sourced<number> = {
  value: 11,
  source: part27('27.1322', '(a) to (d); source note: amendment 27-11, 41 FR 55470', '20 Dec 1976'),
};

/** The text read is that since this amendment; what the section said before was not read. */
export const rotorcraftOwnProtectorSince: Sourced<number> = {
  value: 13,
  source: part27('27.1357', '(b); source note: amendment 27-13, 42 FR 36972', '18 Jul 1977'),
};

/** First amendment with the greater of the two sets of `rotorcraftMassItems`. */
export const rotorcraftMassItemsSince: Sourced<number> = {
  value: 25,
  source: { document: '14 CFR 27.561', paragraph: '(b)(3)', edition: 'amendment 27-25 (1989)', status: 'from-memory' },
};
/** The section asks for a mount that holds since the part began; only how much differs. */
export const rotorcraftMountsSince: Sourced<number> = {
  value: 0,
  source: { document: '14 CFR 27.561', paragraph: '(b)(3)', edition: 'first text (1964)', status: 'from-memory' },
};
