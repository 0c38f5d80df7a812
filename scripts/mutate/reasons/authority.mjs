/** Changes in `rules/authority` that make no difference, one by one. */
export default [
  {
    file: 'rules/authority/source-say-so.ts',
    code: '[]',
    line: 'dossier.status.sayings ?? []',
    reason: 'looked through for the say-so of a result, which what stands in for the empty list is not',
  },
];
