const oneSubject = 'an entry names at least one subject by the schema';
const noSet = 'a test set is judged exactly where an entry names one: the two guards are one';

/** Files below `rules/after-work/`, as in `reasons.mjs`. */
export default [
  { file: 'rules/after-work/authorised-person.ts', code: "'aircraft'", line: 'subjects[0]', reason: oneSubject },
  {
    file: 'rules/after-work/test-equipment-calibrated.ts',
    code: "'aircraft'",
    line: 'subjects[0]',
    reason: oneSubject,
  },
  ...[
    ['clause === null || record.instrument === null', 'clause === null && record.instrument === null'],
    ['clause === null', 'false'],
    ['record.instrument === null', 'false'],
  ].map(([code, replacement]) => ({
    file: 'rules/after-work/test-equipment-calibrated.ts',
    code,
    replacement,
    reason: noSet,
  })),
  {
    file: 'rules/after-work/test-equipment-calibrated.ts',
    code: '[]',
    line: 'clause.missing ?? []',
    reason: 'a fact that is not recorded names its place',
  },
  {
    file: 'rules/after-work/tests-after-change.ts',
    code: '[]',
    line: 'owedAfterWork[each',
    reason: 'the three kinds named here are in the table',
  },
  {
    file: 'rules/after-work/controls-free-and-secured.ts',
    code: 'name.toLowerCase()',
    replacement: 'name.toUpperCase()',
    reason: 'two names alike in small letters are alike in capital ones',
  },
];
