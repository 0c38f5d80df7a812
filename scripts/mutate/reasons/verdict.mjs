const alike = 'two outcomes of one rank are the same outcome';
const absent = 'a comparison with an edge that is not there is false';

/** Changes in `verdict` that make no difference, one by one. */
export default [
  {
    file: 'verdict/conditions.ts',
    code: 'brought.length === 0',
    replacement: 'false',
    reason: 'gives a copy of the same list',
  },
  {
    file: 'verdict/conditions.ts',
    code: "''",
    line: "asked.region ?? ''",
    reason: 'stands for a region that nobody said, and is the name of none either way',
  },
  { file: 'verdict/evaluate.ts', code: 'a < b', replacement: 'a <= b', reason: alike },
  { file: 'verdict/evaluate.ts', code: 'a > b', replacement: 'a >= b', reason: alike },
  { file: 'verdict/evaluate.ts', code: 'leaf.from !== undefined', replacement: 'true', reason: absent },
  { file: 'verdict/evaluate.ts', code: 'leaf.before !== undefined', replacement: 'true', reason: absent },
  {
    file: 'verdict/regions.ts',
    code: 'weakest === null',
    replacement: 'false',
    reason: 'the weaker of no status and one is that one, which the comparison gives too',
  },
];
