const statement = 'guards an index of a statement that the system itself has handed out';
const queue = 'guards an index that runs over the queue';

/** Changes in `way-back` that make no difference, one by one. */
export default [
  {
    file: 'way-back/fittings.ts',
    code: "['lateral-deviation']",
    reason: 'only what shows the course is fitted as an indicator, which is asked of them next',
  },
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
  {
    file: 'way-back/cheapest.ts',
    code: 'Math.abs(a.cost - b.cost) > 1e-9',
    replacement: 'Math.abs(a.cost - b.cost) >= 1e-9',
    reason: 'the very edge of what adding leaves: prices differ by far more, or by far less',
  },
  {
    file: 'way-back/cheapest.ts',
    code: 'a.name < b.name',
    replacement: 'a.name <= b.name',
    reason:
      'no two in the queue have one name: moves from one state have different names, and a state is looked at once',
  },
  {
    file: 'way-back/find-out.ts',
    code: 'a.fact < b.fact',
    replacement: 'a.fact <= b.fact',
    reason: 'the order of two that are never equal: a fact is listed once',
  },
  {
    file: 'way-back/find-out.ts',
    code: 'each === flight',
    replacement: 'false',
    reason: 'the flight would be judged a second time, by the same system at the same point',
  },
  {
    file: 'way-back/gaps.ts',
    code: '![...facts].some((fact) => askers.has(fact))',
    replacement: 'false',
    reason:
      'spares work only: where no open statement asks for the facts, taking them to turn out well changes no answer',
  },
  {
    file: 'way-back/moves.ts',
    code: "each.stops === 'capability'",
    replacement: 'true',
    reason:
      'tells the kinds of effect apart for the types: other effects name no capability, and for none nothing is fitted',
  },
  {
    file: 'way-back/way-back.ts',
    code: 'known',
    replacement: 'false',
    line: 'if (known) return known',
    reason: 'spares work only: a state that is judged again is judged the same',
  },
  ...['true', 'before.length <= state.deeds.length'].map((replacement) => ({
    file: 'way-back/way-back.ts',
    code: 'before.length < state.deeds.length',
    replacement,
    reason: 'spares work only: the deeds so far, done again from the start, lead to the aircraft as it stands',
  })),
];
