export default [
  {
    file: 'rules/defects/deferral-due.ts',
    code: 'reinspectedOn !== null',
    replacement: 'true',
    reason: 'null is later than no day',
  },
];
