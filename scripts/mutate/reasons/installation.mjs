const figures = 'a direction that fails was judged by its figures: they are there';

/** Files below `rules/installation/`, as in `reasons.mjs`. */
export default [
  { file: 'rules/installation/mount-strength.ts', code: 'bearings[failing]?.value?.amount', reason: figures },
  { file: 'rules/installation/mount-strength.ts', code: 'bearings[failing]?.limit?.amount', reason: figures },
  {
    file: 'rules/mount-loads.ts',
    code: "'unknown'",
    line: 'oldPart23Binds',
    reason: 'what that says of CAR 3 is not asked: CAR 3 is told apart before',
  },
  {
    file: 'rules/installation/mount-strength.ts',
    code: 'unit.asBuilt?.couldStrike',
    reason: 'asked only where the strength of the mount is recorded, which stands in the same place',
  },
  {
    file: 'rules/installation/reach-and-view.ts',
    code: 'unit.place !== null',
    replacement: 'true',
    reason: 'a place that is not recorded is not among those that the manual approves',
  },
];
