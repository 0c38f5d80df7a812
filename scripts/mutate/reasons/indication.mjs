const filler = 'looked through for a unit or an approach, which what stands in for the empty list is not';

/** Files below `rules/indication/`, as in `reasons.mjs`. */
export default [
  { file: 'rules/indication/approach-annunciation.ts', code: '[]', line: 'grants ?? []', reason: filler },
  {
    file: 'rules/indication/approach-annunciation.ts',
    code: '/^approach-l/',
    replacement: '/approach-l/',
    reason: 'no use that can be allowed has these letters but at its beginning',
  },
];
