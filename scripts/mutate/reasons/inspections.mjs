const tolerance = 'a tolerance is in no region: what may be overflown for one purpose makes nothing ready';

/** Files below `rules/inspections/`, as in `reasons.mjs`. */
export default [
  {
    file: 'rules/inspections/hundred-hour-inspection.ts',
    code: "'earlier'",
    line: 'countFrom',
    reason: 'what counts neither from when it was done nor from when it was due counts from the earlier',
  },
  { file: 'rules/inspections/hundred-hour-inspection.ts', code: "'en-route'", line: 'toleranceFor', reason: tolerance },
  { file: 'rules/inspections/life-limits.ts', code: "'none'", line: 'toleranceFor', reason: tolerance },
  {
    file: 'rules/inspections/life-limits.ts',
    code: "'done'",
    line: 'countFrom',
    reason: 'a life has no due point of an earlier one: it counts from when it began, whatever is counted from',
  },
  {
    file: 'rules/inspections/directives.ts',
    code: "clause.is === 'leaf'",
    replacement: 'true',
    reason: 'only a leaf bears that label',
  },
  {
    file: 'rules/inspections/documents-in-force.ts',
    code: 'certificate !== null',
    replacement: 'true',
    reason: 'a certificate that is not recorded is not among those without an end',
  },
  {
    file: 'rules/inspections/vor-check.ts',
    code: 'points[0]?.source',
    reason: 'a check that was judged has at least the point of its method',
  },
];
