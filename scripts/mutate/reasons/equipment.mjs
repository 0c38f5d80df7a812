/** Files below `rules/equipment/`, as in `reasons.mjs`. */
export default [
  {
    file: 'rules/equipment/ads-b-out-fitted.ts',
    code: '[]',
    line: 'letters.includes(tso)',
    reason: 'what stands in for the empty list is an authorisation to no standard that is looked for',
  },
  {
    file: 'rules/equipment/altitude-same-source.ts',
    code: '[]',
    line: 'sourceOf(facts,',
    reason: 'no unit has been passed yet, and what stands in for the empty list is none',
  },
  {
    file: 'rules/equipment/ads-b-pair.ts',
    code: 'identity.positionUnit === null',
    replacement: 'false',
    reason: 'no unit is without an id: a source that is not recorded is not found either',
  },
];
