import { setImmediate } from 'node:timers/promises';
import { assess } from '@tallywing/rules';
import type { Catalogue } from '@tallywing/rules';
import type { Profile } from '../aircraft/stamp.js';
import type { PlannedAircraft } from './planner.js';

export interface BoardCount {
  readonly profileId: string;
  readonly profile: string;
  readonly yes: number;
  readonly no: number;
  readonly cannotTell: number;
}

/** What the board would say of the planned aircraft at this moment, by profile. */
export class BoardCounts {
  readonly counts: { profileId: string; profile: string; yes: number; no: number; cannotTell: number }[];

  constructor(
    private readonly profiles: readonly Profile[],
    private readonly now: string,
  ) {
    this.counts = profiles.map(({ id, name }) => ({ profileId: id, profile: name, yes: 0, no: 0, cannotTell: 0 }));
  }

  /** @param done hears after each aircraft; other requests get their turn in between */
  async add(aircraft: readonly PlannedAircraft[], catalogue: Catalogue, done: () => void): Promise<void> {
    const moment = { instant: this.now, to: this.now, hoursAhead: 0 };
    for (const { dossier } of aircraft) {
      this.profiles.forEach((profile, index) => {
        const ready = assess(dossier, catalogue, moment, profile.conditions).operations['flight']?.ready;
        const count = this.counts[index];
        if (!count) return;
        if (ready === 'yes') count.yes += 1;
        else if (ready === 'no') count.no += 1;
        else count.cannotTell += 1;
      });
      done();
      await setImmediate();
    }
  }
}
