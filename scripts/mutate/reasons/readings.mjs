export default [
  {
    file: 'rules/readings/compass-deviation.ts',
    code: "'airplane'",
    reason: 'the calculation asks for rotorcraft; whatever else it is told is an airplane',
  },
];
