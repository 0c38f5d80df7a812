const filler = 'looked through for a unit or a limitation, which what stands in for the empty list is not';
const first = 'guards the first of a list that has one: the statement is made of its members';
const noSignal = 'a list of approved interfaces names signals: a joint of which no signal is known is in none';

/** Files below `rules/interfaces/`, as in `reasons.mjs`. */
export default [
  ...[
    ['!from || !to || signal === null', 'false'],
    ['!from || !to || signal === null', '(!from || !to) && signal === null'],
    ['signal === null', 'false'],
  ].map(([code, replacement]) => ({
    file: 'rules/interfaces/link-approved.ts',
    code,
    replacement,
    reason: noSignal,
  })),
  { file: 'rules/interfaces/link-not-prohibited.ts', code: '[]', line: 'limitations ?? []', reason: filler },
  { file: 'rules/interfaces/link-not-prohibited.ts', code: '[]', line: 'link.fromUnit === of.id', reason: filler },
  { file: 'rules/interfaces/required-companions.ts', code: '[]', line: 'link.fromUnit === id', reason: filler },
  { file: 'rules/interfaces/required-companions.ts', code: 'named[0]?.document', reason: first },
  { file: 'rules/interfaces/options-not-exclusive.ts', code: 'limits[0]?.document', reason: first },
  {
    file: 'rules/interfaces/options-not-exclusive.ts',
    code: 'limits.every(({ elsewhere }) => elsewhere)',
    replacement: 'limits.some(({ elsewhere }) => elsewhere)',
    reason:
      'a limitation within the unit names what it excludes (the catalogue takes no other), so only where all mean other units is nothing left to judge',
  },
  {
    file: 'rules/interfaces/signals-compatible.ts',
    code: 'standard !== null',
    replacement: 'true',
    reason: 'no standard at all is not among those with one transmitter',
  },
];
