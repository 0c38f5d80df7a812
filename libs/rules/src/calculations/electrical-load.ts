import type { Circuit, LoadCondition } from '../dossier/installation.js';
import { roundTo } from './rounding.js';

/** Amperes to 0.01, with the circuits of which something is missing. */
export interface ConditionLoad {
  readonly loadA: number;
  readonly open: readonly Circuit[];
}

/** Continuous load of the circuits that are on in a condition; short intermittent loads are left out. */
export function continuousLoadIn(condition: LoadCondition, circuits: readonly Circuit[]): ConditionLoad {
  const maybeOn = circuits.filter(({ usedIn }) => usedIn === null || usedIn.includes(condition));
  return loadOf(maybeOn, ({ usedIn }) => usedIn !== null);
}

/** What the battery alone carries: circuits that are essential, and those that stay on. */
export function batteryLoad(circuits: readonly Circuit[]): ConditionLoad {
  const stays = ({ usedIn }: Circuit) => usedIn?.includes('battery-only') ?? false;
  const maybeOn = circuits.filter((each) => each.essential !== false || each.usedIn === null || stays(each));
  return loadOf(maybeOn, (each) => each.essential === true || stays(each));
}

function loadOf(maybeOn: readonly Circuit[], surelyOn: (circuit: Circuit) => boolean): ConditionLoad {
  const drawing = maybeOn.filter(({ intermittent }) => intermittent !== true);
  const counted = drawing.filter((each) => surelyOn(each) && each.intermittent === false);
  return {
    loadA: roundTo(
      counted.reduce((sum, each) => sum + (each.loadA ?? 0), 0),
      2,
    ),
    open: drawing.filter((each) => each.loadA === null || !counted.includes(each)),
  };
}

/** Minutes, to 0.1 min, that a battery carries a load above 0 A. Share: what of its rated capacity is counted on. */
export function batteryMinutesAt(load: number, capacityAh: number, share: number): number {
  return roundTo((capacityAh * share * 60) / load, 1);
}
