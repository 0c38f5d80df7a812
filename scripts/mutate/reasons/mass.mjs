/** Files below `rules/mass/`, as in `reasons.mjs`. */
export default [
  {
    file: 'rules/mass/loaded-extremes.ts',
    code: '[]',
    line: 'armIn === null ? []',
    reason: 'what stands in for the empty list has no weight, and so is out of bounds as a change without an arm is',
  },
];
