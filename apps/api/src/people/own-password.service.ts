import type { Clock } from '../common/clock.js';
import { badInput } from '../common/errors.js';
import type { Database } from '../database/database.js';
import { changeHouse } from '../house/house-entry.data.js';
import { authorise } from '../identity/access.js';
import type { SignedIn } from '../identity/identity.service.js';
import { checkPassword, hashPassword, passwordMatches } from '../identity/passwords.js';
import type { SignInThrottle } from '../identity/throttle.js';
import { passwordHashOf, updatePassword } from './people.data.js';
import { endSessionsOf, sessionName } from './sessions.data.js';

/** The password of whoever asks. A manager sets anybody's, and then nobody has to know the old one. */
export class OwnPasswordService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly throttle: SignInThrottle,
  ) {}

  /**
   * An open browser that somebody walked away from is not enough: it takes the password in use, and guessing is slowed down.
   * @returns how many other sessions were ended
   * @throws AppError BAD_INPUT naming the field, TOO_MANY
   */
  async change(
    signedIn: SignedIn | null,
    { current, next }: { readonly current: string; readonly next: string },
    address: string,
  ): Promise<number> {
    const actor = signedIn?.actor ?? null;
    authorise(actor, 'sessions.own');
    const { organisationId, memberId } = actor;
    checkPassword(next, 'input.next');
    const account = `${organisationId} ${memberId}`;
    const now = this.clock.now();
    await this.throttle.check(account, address, now);
    const known = await this.database.withOrganisation(actor, (connection) =>
      passwordHashOf(connection, organisationId, memberId),
    );
    const matches = current.length <= 1000 && (await passwordMatches(known, current));
    if (!matches) {
      await this.throttle.failed(account, address, now);
      throw badInput('input.current', 'This is not your password.', 'Type the one you signed in with.');
    }
    await this.throttle.check(account, address, now);
    await this.throttle.succeeded(account, address);
    const hash = await hashPassword(next);
    return await changeHouse(this.database, this.clock, actor, async (connection, at) => {
      if ((await passwordHashOf(connection, organisationId, memberId)) !== known)
        throw badInput('input.current', 'Your password was changed meanwhile.', 'Sign in again with the new one.');
      await updatePassword(connection, organisationId, memberId, hash);
      const here = sessionName(signedIn?.sessionId ?? '');
      const sessionsEnded = await endSessionsOf(connection, organisationId, memberId, at, here);
      const subject = { kind: 'person' as const, id: memberId, name: actor.name };
      return {
        answer: sessionsEnded,
        entry: { kind: 'person.own-password', subject, before: null, after: { sessionsEnded } },
      };
    });
  }
}
