import type { AircraftMove } from './query.js';

/** Aircraft that change alike, put together: ten equal lists say no more than one. Those that do not change come last. */
export function alikeMoves(moves: readonly AircraftMove[]): readonly (readonly AircraftMove[])[] {
  const groups = new Map<string, AircraftMove[]>();
  for (const move of moves) {
    const { verdicts, capabilities, opened, closed, refused } = move;
    const words = (findings: AircraftMove['opened']) => findings.map(({ outcome, text }) => [outcome, text]);
    const key = JSON.stringify([verdicts, capabilities, words(opened), words(closed), refused]);
    groups.set(key, [...(groups.get(key) ?? []), move]);
  }
  return [...groups.values()].sort((a, b) => Number(isSame(a[0])) - Number(isSame(b[0])));
}

/** Nothing about it would be judged otherwise. */
export function isSame(move: AircraftMove | undefined): boolean {
  return (
    move === undefined ||
    [move.verdicts, move.capabilities, move.opened, move.closed, move.refused].every((each) => each.length === 0)
  );
}
