export default [
  {
    file: 'rules/databases/navigation-data-current.ts',
    code: "use === 'en-route'",
    replacement: "use !== 'en-route'",
    reason: 'what falls due is the same for both uses: one of them states it, whichever',
  },
];
