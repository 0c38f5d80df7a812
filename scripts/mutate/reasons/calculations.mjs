const lastIsMissing = 'where one of four numbers is missing the last one is, which is asked as well';
const finite = 'what is no number is not finite either, which is asked in the same line';

/** Changes in `calculations` that make no difference, one by one. */
export default [
  {
    file: 'calculations/ads-b.ts',
    code: 'each <= bound * (1 + 1e-9)',
    replacement: 'each < bound * (1 + 1e-9)',
    reason: 'the very edge of what rounding leaves: two bounds are the same, or differ by far more',
  },
  {
    file: 'calculations/loading.ts',
    code: '-Infinity',
    replacement: '+Infinity',
    reason:
      'only what is always aboard can be too heavy for the envelope, and then nothing is added: there is nothing to compare',
  },
  ...[
    'added.weightLb <= 0',
    'next.weightLb === point.weightLb',
    'weight > point.weightLb && weight < next.weightLb',
    'weight > point.weightLb',
    'weight < next.weightLb',
    'weight > from',
    'weight < from + added.weightLb',
    '[]',
  ].map((code) => ({
    file: 'calculations/loading.ts',
    code,
    reason:
      'tries one more load on the way, or the same one twice, or none at all: no load that the station takes is worse than the worst',
  })),
  {
    file: 'calculations/loading.ts',
    code: 'margin(each) < margin(least)',
    replacement: 'margin(each) <= margin(least)',
    reason: 'of two loadings with the same margin either is the worst',
  },
  {
    file: 'calculations/antenna.ts',
    code: 'x === undefined || y === undefined || otherX === undefined',
    reason: lastIsMissing,
  },
  { file: 'calculations/antenna.ts', code: 'x === undefined || y === undefined', reason: lastIsMissing },
  { file: 'calculations/antenna.ts', code: 'x === undefined', reason: lastIsMissing },
  { file: 'calculations/antenna.ts', code: 'y === undefined', reason: lastIsMissing },
  { file: 'calculations/antenna.ts', code: 'otherX === undefined', reason: lastIsMissing },
  { file: 'calculations/errors.ts', code: "typeof value !== 'number'", replacement: 'false', reason: finite },
  {
    file: 'calculations/altimeter-test.ts',
    code: 'share === 0.5',
    reason: 'the table allows the same at both points: 75 ft',
  },
  {
    file: 'calculations/recurrence.ts',
    code: 'done === undefined',
    replacement: 'false',
    reason: 'nothing is earlier than what is not known, and that is then given: nothing',
  },
  {
    file: 'calculations/rounding.ts',
    code: 'value < 0',
    replacement: 'value <= 0',
    reason: 'nought comes out as nought either way, by the second half of the line',
  },
  {
    file: 'calculations/compass.ts',
    code: "'airplane'",
    reason: 'is only compared with the other kind, which it is not under any name',
  },
  {
    file: 'calculations/vhf.ts',
    code: "''",
    line: 'exec(typeof name',
    reason: 'stands for what is no text, and is no channel name either way',
  },
  {
    file: 'calculations/vhf.ts',
    code: "''",
    line: "match[2] ?? ''",
    reason: 'what matched has its second figures',
  },
  {
    file: 'calculations/altimeter-test.ts',
    code: 'Math.abs(settingInHg - row.settingInHg) < 0.005',
    replacement: 'Math.abs(settingInHg - row.settingInHg) <= 0.005',
    reason: 'the very edge between two settings, which are read to a hundredth',
  },
  {
    file: 'calculations/mass.ts',
    code: 'step?.mostLb',
    reason: 'the last row of the table goes further than any weight that is taken',
  },
  {
    file: 'calculations/wire.ts',
    code: 'conductorC === undefined',
    replacement: 'false',
    reason: 'a temperature that is said to be undefined counts as one left out',
  },
];
