const noVoltage = 'a voltage that is not recorded is in no range';

/** Files below `rules/electrical/`, as in `reasons.mjs`. */
export default [
  { file: 'rules/electrical/voltage-drop.ts', code: 'busV === null', replacement: 'false', reason: noVoltage },
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
    file: 'rules/electrical/one-circuit-per-essential-breaker.ts',
    code: "'unknown'",
    line: 'oldPart23Binds',
    reason: 'what neither binds nor does not is not known, by whatever name',
  },
  {
    file: 'rules/electrical/power-supplied.ts',
    code: 'busV < supplyV.least',
    replacement: 'busV <= supplyV.least',
    reason: 'asked only of a bus outside the range: one at its least is in it',
  },
];
