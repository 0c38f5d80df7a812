const admitted = 'what is applied was admitted: what it names is there';
const filler = 'looked through for a name, which what stands in for the empty list does not have';
const never = 'two that are equal were told apart before: one is earlier or later than the other';
const shortCut = 'a short cut: the same object differs in nothing';
const nothingCompares = 'a day or time that is not recorded is neither before nor after another';

/** Files below `changes/`, as in `reasons.mjs`. */
export default [
  { file: 'changes/say-so.ts', code: '[]', line: 'has(dossier.status.sayings ?? []', reason: filler },
  { file: 'changes/say-so.ts', code: '[]', line: '(dossier.status.sayings ?? []).map', reason: admitted },
  {
    file: 'changes/say-so.ts',
    code: 'change.at < each.until',
    replacement: 'change.at <= each.until',
    reason: 'ended at its very end, it ends when it did',
  },
  { file: 'changes/fittings.ts', code: '[]', line: 'gone ?', reason: admitted },
  { file: 'changes/fittings.ts', code: '[]', line: 'gone?.units ?? []', reason: admitted },
  { file: 'changes/fittings.ts', code: '[]', line: 'units.find', reason: admitted },
  { file: 'changes/fittings.ts', code: 'record === null', replacement: 'false', reason: admitted },
  {
    file: 'changes/fittings.ts',
    code: 'found.typeId === null',
    replacement: 'false',
    reason: 'a catalogue has no type without a name',
  },
  {
    file: 'changes/checks.ts',
    code: 'unit.typeId === null',
    replacement: 'false',
    reason: 'a catalogue has no type without a name',
  },
  { file: 'changes/checks.ts', code: 'date === null', replacement: 'false', reason: nothingCompares },
  { file: 'changes/checks.ts', code: 'made !== null', replacement: 'true', reason: nothingCompares },
  {
    file: 'changes/checks.ts',
    code: '[]',
    line: 'functions: found ?',
    reason: 'asked for the functions of a transmitter, which what stands in for the empty list is not',
  },
  { file: 'changes/differences.ts', code: 'was === is', replacement: 'false', reason: shortCut },
  { file: 'changes/differences.ts', code: 'one === other', replacement: 'false', reason: shortCut },
  {
    file: 'changes/looking-back.ts',
    code: '[]',
    line: 'corrects[kind] ?? []',
    reason: 'a kind that corrects nothing is looked for among kinds, which what stands in for the empty list is not',
  },
  {
    file: 'changes/looking-back.ts',
    code: 'day.date > known',
    replacement: 'day.date >= known',
    reason: 'the same day again is the same day',
  },
  {
    file: 'changes/looking-back.ts',
    code: "''",
    line: 'byNumber.get(number)',
    reason: 'numbers of corrections are those of entries that are there',
  },
  {
    file: 'changes/looking-back.ts',
    code: 'byNumber.get(number)?.change',
    reason: 'numbers of corrections are those of entries that are there',
  },
  {
    file: 'changes/obligations.ts',
    code: "owed.subject === 'aircraft'",
    replacement: 'false',
    reason: 'work on no unit is work on the aircraft: either opens the same',
  },
  {
    file: 'changes/obligations.ts',
    code: "'aircraft'",
    line: "owed.subject === 'aircraft'",
    reason: 'work on no unit is work on the aircraft: either opens the same',
  },
  { file: 'changes/meter.ts', code: '!definition', replacement: 'false', reason: admitted },
  {
    file: 'changes/meter.ts',
    code: 'dossier.meters.definitions.find((each) => each.id === change.meter)?.offset',
    reason: admitted,
  },
  { file: 'changes/unit.ts', code: 'mass === null', replacement: 'false', reason: admitted },
  {
    file: 'changes/upkeep.ts',
    code: 'load.effective !== null && load.expires !== null',
    replacement: 'load.effective !== null || load.expires !== null',
    reason: nothingCompares,
  },
  { file: 'changes/upkeep.ts', code: 'load.effective !== null', replacement: 'true', reason: nothingCompares },
  { file: 'changes/upkeep.ts', code: 'load.expires !== null', replacement: 'true', reason: nothingCompares },
  {
    file: 'changes/upkeep.ts',
    code: 'dossier.status.defects.find((each) => each.id === change.defectId)?.subject',
    reason: admitted,
  },
  { file: 'changes/upkeep.ts', code: 'found.until !== null', replacement: 'true', reason: nothingCompares },
  {
    file: 'changes/records.ts',
    code: 'a.done.date < b.done.date',
    replacement: 'a.done.date <= b.done.date',
    reason: never,
  },
  { file: 'changes/records.ts', code: 'a.done.at < b.done.at', replacement: 'a.done.at <= b.done.at', reason: never },
  { file: 'changes/records.ts', code: 'one.date > other.date', replacement: 'one.date >= other.date', reason: never },
  { file: 'changes/records.ts', code: 'one.at > other.at', replacement: 'one.at >= other.at', reason: never },
  { file: 'changes/lists.ts', code: 'a.id > b.id', reason: 'ids of one list differ: what is not before stands after' },
];
