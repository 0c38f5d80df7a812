const figures = 'a direction that fails was judged by its figures: they are there';

/** Files below `rules/installation/`, as in `reasons.mjs`. */
export default [
  { file: 'rules/installation/mount-strength.ts', code: 'bearings[failing]?.value?.amount', reason: figures },
  { file: 'rules/installation/mount-strength.ts', code: 'bearings[failing]?.limit?.amount', reason: figures },
  {
    file: 'rules/installation/reach-and-view.ts',
    code: 'unit.place !== null',
    replacement: 'true',
    reason: 'a place that is not recorded is not among those that the manual approves',
  },
];
