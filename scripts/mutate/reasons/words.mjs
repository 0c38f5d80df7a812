/** Changes in `words` that make no difference, one by one. */
export default [
  {
    file: 'words/fact-words.ts',
    code: "''",
    line: "[part = '', noun = '', ...below]",
    reason: 'stands for a part that every path has',
  },
  { file: 'words/dates.ts', code: '/ 00:00$/', replacement: '/ 00:00/', reason: 'the time stands at the end' },
];
