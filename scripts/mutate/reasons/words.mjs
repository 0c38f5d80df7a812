/** Changes in `words` that make no difference, one by one. */
export default [
  { file: 'words/dates.ts', code: '/ 00:00$/', replacement: '/ 00:00/', reason: 'the time stands at the end' },
];
