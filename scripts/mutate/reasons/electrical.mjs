/** Files below `rules/electrical/`, as in `reasons.mjs`. */
export default [
  {
    file: 'rules/electrical/continuous-load.ts',
    code: 'alternatorA !== null',
    replacement: 'true',
    reason: 'chooses the words for a load that is too much, which none is of an output that is not recorded',
  },
  ...[
    ['alternatorA === null || limit === null', 'alternatorA === null && limit === null'],
    ['alternatorA === null', 'false'],
    ['limit === null', 'false'],
  ].map(([code, replacement]) => ({
    file: 'rules/electrical/load-by-condition.ts',
    code,
    replacement,
    reason: 'there is a limit exactly where the output is recorded: the two guards are one',
  })),
  {
    file: 'rules/electrical/power-supplied.ts',
    code: 'busV < supplyV.least',
    replacement: 'busV <= supplyV.least',
    reason: 'asked only of a bus outside the range: one at its least is in it',
  },
];
