const statement = 'guards an index of a statement that the system itself has handed out';
const grid = 'looks at more instants than it must, which finds the same first change';

/** Changes in `assess` that make no difference, one by one. */
export default [
  {
    file: 'assess/step-notes.ts',
    code: "''",
    line: "topic ?? ''",
    reason: 'stands for an entry whose kind is not chosen yet, and is the name of none',
  },
  { file: 'assess/assess.ts', code: 'system.statements[index]?.key', reason: statement },
  { file: 'assess/assess.ts', code: '[]', line: 'system.statements[index]?.key ?? []', reason: statement },
  { file: 'assess/snapshot.ts', code: 'system.statements[index]?.topFt', reason: statement },
  { file: 'assess/snapshot.ts', code: 'system.statements[index]?.key', reason: statement },
  { file: 'assess/snapshot.ts', code: '[]', line: 'system.statements[index]?.key ?? []', reason: statement },
  { file: 'assess/snapshot.ts', code: 'system.statements[index]?.clause', reason: statement },
  { file: 'assess/snapshot.ts', code: 'system.statements[index]?.ruleId', reason: statement },
  { file: 'assess/snapshot.ts', code: 'statement?.ruleId', reason: statement },
  {
    file: 'assess/snapshot.ts',
    code: 'known !== undefined',
    replacement: 'false',
    line: 'return known;',
    reason: 'only remembers what it would work out again',
  },
  {
    file: 'assess/snapshot.ts',
    code: "'cannot-tell'",
    line: "      'cannot-tell',",
    reason: 'what a list gives in which nothing applies, and one member of this one always does',
  },
  {
    file: 'assess/snapshot.ts',
    code: "'cannot-tell'",
    line: 'needsOf(flight).map(needOutcome)',
    reason:
      'what a list gives in which nothing applies; every flight needs an aircraft that may fly, which is never not-applicable',
  },
  {
    file: 'assess/snapshot.ts',
    code: "'not-met'",
    line: 'need.anyOf.map(needOutcome)',
    reason: 'what an empty list gives; a need that may be answered in several ways names them',
  },
  {
    file: 'assess/snapshot.ts',
    code: "'not-applicable'",
    line: 'means.judged ?',
    reason: 'stands second in the list, behind an outcome that is never not-applicable and is not made worse by it',
  },
  {
    file: 'assess/system.ts',
    code: "effect.stops !== 'capability'",
    replacement: 'false',
    reason: 'an effect that stops no capability names none, so that the comparison after it says the same',
  },
  {
    file: 'assess/assess.ts',
    code: 'ends === undefined',
    replacement: 'false',
    reason: 'asked at no moment nothing has ended, so that nothing is told of it either',
  },
  {
    file: 'assess/release.ts',
    code: "each.stops === 'capability'",
    replacement: 'true',
    reason: 'an effect that stops no capability names none, so that the comparison after it says the same',
  },
  {
    file: 'assess/release.ts',
    code: "effects.some((each) => each.stops !== 'nothing')",
    replacement: "effects.every(each => each.stops !== 'nothing')",
    reason: 'what a rule of the topic says costs nothing, or each of its effects costs something',
  },
  {
    file: 'assess/release.ts',
    code: "effects.some((each) => each.stops === 'release' || (each.stops === 'capability' && each.capability === 'fly'))",
    reason: 'what a rule of the topic says grounds and stops the release by all its effects, or by none',
  },
  { file: 'assess/assess.ts', code: 'leans || edges.meters.size > 0', replacement: 'true', reason: grid },
  { file: 'assess/assess.ts', code: 'edges.meters.size > 0', replacement: 'edges.meters.size >= 0', reason: grid },
  {
    file: 'assess/assess.ts',
    code: 'view.later(moment.to).filter((each) => edges.instants.has(each))',
    replacement: 'view.later(moment.to)',
    reason: grid,
  },
  {
    file: 'assess/assess.ts',
    code: 'edges.meters.size === 0 && !leans',
    replacement: 'false',
    reason: 'a clause that hangs on no meter is asked at more hours than it must be, and says the same at each',
  },
  {
    file: 'assess/assess.ts',
    code: 'answers.at(-1)?.ready',
    reason: 'the first moment of the flight is always in the list',
  },
  {
    file: 'assess/in-short.ts',
    code: '{ instant }',
    reason: 'where edges begin is asked by nothing here: the view only remembers snapshots of one instant',
  },
  {
    file: 'assess/in-short.ts',
    code: "'not-applicable'",
    reason: 'an outcome that stays out of the list whatever it is called',
  },
  {
    file: 'assess/meters.ts',
    code: 'latest === null',
    replacement: 'false',
    line: 'if (!reading',
    reason: 'where one meter has a reading there is a latest reading',
  },
  {
    file: 'assess/meters.ts',
    code: 'asOf === undefined',
    replacement: 'false',
    reason: 'a meter without a reading shows nothing either, which is asked in the same line',
  },
  {
    file: 'assess/meters.ts',
    code: 'end > from',
    replacement: 'end >= from',
    reason: 'the later of two that are equal is either',
  },
  {
    file: 'assess/meters.ts',
    code: 'each.asOf > latest',
    replacement: 'each.asOf >= latest',
    reason: 'the later of two that are equal is either',
  },
];
