/** One move of a search: what is done, its name and its price. The same deed has the same name in every state. */
export interface Move<A> {
  readonly id: string;
  readonly action: A;
  /** Not negative. */
  readonly cost: number;
}

export interface Problem<S, A> {
  readonly start: S;
  readonly solved: (state: S) => boolean;
  /** Moves of which every solution from here takes at least one. */
  readonly moves: (state: S) => readonly Move<A>[];
  readonly after: (state: S, action: A) => S;
  /** States with one key have the same future. */
  readonly key: (state: S) => string;
}

export interface Path<S, A> {
  readonly moves: readonly Move<A>[];
  readonly cost: number;
  readonly state: S;
}

export interface Found<S, A> {
  /** Cheapest first; none contains all moves of a cheaper one. */
  readonly paths: readonly Path<S, A>[];
  /** States looked at. */
  readonly looked: number;
  /** False: the search stopped at its limit; a cheaper path than any found was still excluded, more paths were not. */
  readonly complete: boolean;
}

/**
 * Uniform-cost search: states are judged when they come to the head of the queue, cheapest first, so the first solution
 * is the cheapest. Ties go to fewer moves, then to the order of names, so that the answer does not depend on chance.
 */
export function cheapest<S, A>(
  problem: Problem<S, A>,
  limits: { readonly states: number; readonly paths: number },
): Found<S, A> {
  const queue: Waiting<S, A>[] = [{ from: problem.start, moves: [], cost: 0, name: '' }];
  const seen = new Set<string>();
  const paths: Path<S, A>[] = [];
  let looked = 0;
  while (queue.length > 0 && paths.length < limits.paths) {
    if (looked >= limits.states) return { paths, looked, complete: false };
    const next = takeFirst(queue);
    if (!next || contains(next, paths)) continue;
    const last = next.moves.at(-1);
    const state = last ? problem.after(next.from, last.action) : next.from;
    const key = problem.key(state);
    if (seen.has(key)) continue;
    seen.add(key);
    looked += 1;
    if (problem.solved(state)) {
      paths.push({ moves: next.moves, cost: next.cost, state });
      continue;
    }
    for (const move of problem.moves(state)) {
      const moves = [...next.moves, move];
      queue.push({ from: state, moves, cost: next.cost + move.cost, name: moves.map((each) => each.id).join('\n') });
    }
  }
  return { paths, looked, complete: true };
}

interface Waiting<S, A> {
  /** State before the last move, which is made only when its turn comes. */
  readonly from: S;
  readonly moves: readonly Move<A>[];
  readonly cost: number;
  readonly name: string;
}

function contains<S, A>(waiting: Waiting<S, A>, paths: readonly Path<S, A>[]): boolean {
  const ids = new Set(waiting.moves.map((each) => each.id));
  return paths.some((path) => path.moves.every((each) => ids.has(each.id)));
}

/** Queues stay at a few hundred entries: a pass over them costs less than judging one state. */
function takeFirst<S, A>(queue: Waiting<S, A>[]): Waiting<S, A> | undefined {
  let best = 0;
  for (let at = 1; at < queue.length; at += 1) if (before(queue[at], queue[best])) best = at;
  return queue.splice(best, 1)[0];
}

function before<S, A>(a: Waiting<S, A> | undefined, b: Waiting<S, A> | undefined): boolean {
  if (!a || !b) return false;
  if (Math.abs(a.cost - b.cost) > 1e-9) return a.cost < b.cost;
  return a.moves.length === b.moves.length ? a.name < b.name : a.moves.length < b.moves.length;
}
