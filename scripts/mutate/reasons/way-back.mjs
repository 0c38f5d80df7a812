const statement = 'guards an index of a statement that the system itself has handed out';
const queue = 'guards an index that runs over the queue';

/** Changes in `way-back` that make no difference, one by one. */
export default [
  { file: 'way-back/gaps.ts', code: 'system.statements[index]?.remedies', reason: statement },
  { file: 'way-back/gaps.ts', code: 'system.statements[index]?.key', reason: statement },
  { file: 'way-back/gaps.ts', code: '[]', line: 'system.statements[index]?.key ?? []', reason: statement },
  { file: 'way-back/find-out.ts', code: 'system.statements[index]?.subject', reason: statement },
  { file: 'way-back/find-out.ts', code: 'better.statements[index]?.key', reason: statement },
  { file: 'way-back/find-out.ts', code: '!statement', replacement: 'false', reason: statement },
  { file: 'way-back/moves.ts', code: '!statement', replacement: 'false', reason: statement },
  { file: 'way-back/moves.ts', code: '[]', line: 'if (!statement) return [];', reason: statement },
  { file: 'way-back/cheapest.ts', code: '!a || !b', replacement: 'false', reason: queue },
  { file: 'way-back/cheapest.ts', code: '!a || !b', replacement: '!a && !b', reason: queue },
  { file: 'way-back/cheapest.ts', code: 'false', replacement: 'true', line: '!a || !b', reason: queue },
  {
    file: 'way-back/cheapest.ts',
    code: 'at < queue.length',
    replacement: 'at <= queue.length',
    reason: 'past the end of the queue there is nothing, which comes before nothing',
  },
  {
    file: 'way-back/cheapest.ts',
    code: "''",
    line: 'from: problem.start',
    reason: 'the name of the start is compared with none: it is alone in the queue',
  },
  {
    file: 'way-back/cheapest.ts',
    code: 'a.cost < b.cost',
    replacement: 'a.cost <= b.cost',
    reason: 'prices that are equal were told apart in the same line',
  },
  {
    file: 'way-back/cheapest.ts',
    code: 'a.moves.length < b.moves.length',
    replacement: 'a.moves.length <= b.moves.length',
    reason: 'lengths that are equal were told apart in the same line',
  },
];
