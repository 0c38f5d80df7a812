import { setImmediate } from 'node:timers/promises';
import { assess } from '@tallywing/rules';
import type { Profile } from '../aircraft/stamp.js';
import type { Plan } from './plan.js';

export interface BoardCount {
  readonly profileId: string;
  readonly profile: string;
  readonly yes: number;
  readonly no: number;
  readonly cannotTell: number;
}

/**
 * What the board would say of the planned aircraft at this moment, by profile.
 * @param done hears after each aircraft; other requests get their turn in between
 */
export async function boardOf(
  plan: Pick<Plan, 'aircraft' | 'catalogue'>,
  profiles: readonly Profile[],
  now: string,
  done: (aircraft: number) => void,
): Promise<readonly BoardCount[]> {
  const counts = profiles.map(({ id, name }) => ({ profileId: id, profile: name, yes: 0, no: 0, cannotTell: 0 }));
  for (const [at, { dossier }] of plan.aircraft.entries()) {
    profiles.forEach((profile, index) => {
      const moment = { instant: now, to: now, hoursAhead: 0 };
      const ready = assess(dossier, plan.catalogue, moment, profile.conditions).operations['flight']?.ready;
      const count = counts[index];
      if (!count) return;
      if (ready === 'yes') count.yes += 1;
      else if (ready === 'no') count.no += 1;
      else count.cannotTell += 1;
    });
    done(at + 1);
    await setImmediate();
  }
  return counts;
}
