const untyped = 'a unit without a type is looked up under a name that the catalogue has not, and finds none';

/** Changes in `graph` that make no difference, one by one. */
export default [
  {
    file: 'graph/means.ts',
    code: "''",
    line: "signalOf(link) ?? ''",
    reason: 'stands for a joint of unknown signal, and is the name of none of the signals asked for',
  },
  ...['lateral ?? []', '? [source.id] : []'].map((line) => ({
    file: 'graph/annunciation.ts',
    code: '[]',
    line,
    reason: 'looked through for a unit, which what stands in for the empty list is not',
  })),
  { file: 'graph/facts.ts', code: 'unit.typeId === null', replacement: 'false', reason: untyped },
  { file: 'graph/joins.ts', code: 'typeId === null', replacement: 'false', reason: untyped },
];
