/** Files directly in `libs/rules/src/rules`. */
const settledElsewhere = [
  'oil-pressure-system',
  'protected-by-fuses',
  'us-registered',
  'not-part-121',
  'occupant-aged-two',
  'elt-required',
  'no-third-attitude-system',
  'vor-required',
];

export default [
  {
    file: 'rules/accomplished.ts',
    code: "'met'",
    line: 'requirement.readings ? (',
    reason: 'of the result of an entry only "not-met" and "cannot-tell" are looked for',
  },
  {
    file: 'rules/after-work.ts',
    code: 'at > since.at',
    replacement: 'at >= since.at',
    reason: 'equal times were answered before: their order cannot be told',
  },
  {
    file: 'rules/circuits.ts',
    code: 'wireLengthFt !== null',
    replacement: 'true',
    reason: 'null comes out as null either way',
  },
  {
    file: 'rules/data-verification.ts',
    code: 'change !== null',
    replacement: 'true',
    reason: 'null is before no instant',
  },
  {
    file: 'rules/defect-costs.ts',
    code: '[]',
    line: 'itemsServedBy(unit.functions)',
    reason: 'a name that is no item of 91.205 stands in none of its lists',
  },
  {
    file: 'rules/elt-battery.ts',
    code: '[]',
    line: 'return reading ?',
    reason: 'what is neither read after the entry nor perhaps after it is not counted',
  },
  ...["'0001-01-01T00:00Z'", "'cannot-tell'", "() => 'cannot-tell'", '{ …'].map((code) => ({
    file: 'rules/entry-outcome.ts',
    code,
    reason: 'a clause without region, flight or other capability looks at nothing of the point at which it is asked',
  })),
  ...settledElsewhere.map((condition) => ({
    file: 'rules/equipment-items.ts',
    code: `'${condition}'`,
    line: 'case ',
    reason: 'falls through to no answer, which counts as no condition just as the null does',
  })),
  {
    file: 'rules/equipment-items.ts',
    code: "case 'vor-required': …",
    reason: 'falls through to no answer, which counts as no condition just as the null does',
  },
  {
    file: 'rules/gnss-authorisation.ts',
    code: 'each.class === null',
    replacement: 'false',
    reason: 'no class of the table is called null',
  },
  {
    file: 'rules/gnss-authorisation.ts',
    code: '[]',
    line: 'row.nonPrecisionApproach',
    reason: 'no capability is named after an approach that does not exist',
  },
  {
    file: 'rules/in-view.ts',
    code: 'up >= 0',
    replacement: 'up > 0',
    reason: 'straight on the line of sight is within both limits, whichever is shown',
  },
  {
    file: 'rules/navigation-data.ts',
    code: "effective < '1990-01-01'",
    replacement: "effective <= '1990-01-01'",
    reason: 'no cycle begins on that day',
  },
  {
    file: 'rules/navigation-data.ts',
    code: "effective > '2060-12-31'",
    replacement: "effective >= '2060-12-31'",
    reason: 'no cycle begins on that day',
  },
  {
    file: 'rules/navigation-data.ts',
    code: "instant < '1990-01-02'",
    replacement: "instant <= '1990-01-02'",
    reason: 'an instant carries a time and equals no day',
  },
  {
    file: 'rules/navigation-data.ts',
    code: "instant > '2060-12-01'",
    replacement: "instant >= '2060-12-01'",
    reason: 'an instant carries a time and equals no day',
  },
  {
    file: 'rules/recorded-readings.ts',
    code: "''",
    reason: 'only what is read as yes or no has no unit, and that has no figure to show',
  },
  {
    file: 'rules/recorded-readings.ts',
    code: 'limit.least !== undefined',
    replacement: 'true',
    reason: 'nothing is less than a bound that there is not',
  },
  ...['rules/recurring.ts', 'rules/day-count.ts'].map((file) => ({
    file,
    code: "'none'",
    line: 'toleranceFor',
    reason: 'an interval without a tolerance has none to use for anything',
  })),
  {
    file: 'rules/series.ts',
    code: '[]',
    replacement: '["Stryker was here"]',
    reason: 'what is no day and no figure of a meter is no due point',
  },
  {
    file: 'rules/series.ts',
    code: "'due'",
    reason: 'differs only for an entry made before it was due, which is never an interval late',
  },
  {
    file: 'rules/telling-entry.ts',
    code: '[]',
    line: 'readOnly',
    reason: 'no entry is of a kind that does not exist',
  },
  {
    file: 'rules/telling-entry.ts',
    code: '[]',
    line: 'isFailed(record)',
    reason: 'an entry that failed speaks before anybody asks whether it counts',
  },
  {
    file: 'rules/telling-entry.ts',
    code: '[...new Set(all)] …',
    reason: 'of two entries of one day that say the same either may be named',
  },
];
