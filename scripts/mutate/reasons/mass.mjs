/** Files below `rules/mass/`, as in `reasons.mjs`. */
export default [
  {
    file: 'rules/mass/empty-weight-record.ts',
    code: 'on !== null',
    replacement: 'true',
    reason: 'a day that is not recorded is neither before the revision nor that of a change',
  },
  {
    file: 'rules/mass/loaded-extremes.ts',
    code: '[]',
    line: 'armIn === null ? []',
    reason: 'what stands in for the empty list has no weight, and so is out of bounds as a change without an arm is',
  },
];
