/** Changes in what a shop can do that make no difference, one by one. */
export default [
  {
    file: 'way-back/supposing.ts',
    code: '[]',
    line: 'system.establishes[index] ?? []',
    reason:
      'guards an index of a statement that the system itself has handed out: it lists as many of the one as of the other',
  },
];
