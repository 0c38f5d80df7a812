import { jobOfHold } from '@tallywing/rules';
import { AppError } from '../common/errors.js';
import { authorise } from '../identity/access.js';
import type { Actor } from '../identity/access.js';

/**
 * What the general way of recording leaves to the acts made for it: a job's own hold, and a say-so.
 * @returns the jobs whose holds are lifted by hand
 * @throws AppError REFUSED naming the change, FORBIDDEN where the role may not lift the hold of a job
 */
export function guardByHand(actor: Actor, changes: readonly unknown[]): readonly string[] {
  return changes.flatMap((sent, index) => {
    const change = (sent ?? {}) as { kind?: unknown; hold?: { id?: unknown }; holdId?: unknown };
    if (change.kind === 'hold.place' && jobOf(change.hold?.id) !== null)
      throw refused(
        index,
        'hold.id',
        'This name belongs to the hold of a job.',
        'Start the job, or choose another id.',
      );
    if (change.kind === 'say-so.give' || change.kind === 'say-so.end')
      throw refused(
        index,
        '',
        'A say-so is given by a person who may, for what wants one.',
        'Give it on the aircraft.',
      );
    const job = change.kind === 'hold.lift' ? jobOf(change.holdId) : null;
    if (job === null) return [];
    authorise(actor, 'hold.lift-job');
    return [job];
  });
}

function jobOf(holdId: unknown): string | null {
  return typeof holdId === 'string' ? jobOfHold(holdId) : null;
}

function refused(change: number, field: string, message: string, wayOut: string): AppError {
  return new AppError({ code: 'REFUSED', refusals: [{ change, code: 'by-its-own-way', field, message, wayOut }] });
}
