import { createHash, randomBytes } from 'node:crypto';
import type { AuditNotes } from '../audit/notes.js';
import type { Clock } from '../common/clock.js';
import { AppError, badInput } from '../common/errors.js';
import type { Metrics } from '../common/metrics.js';
import type { Actor } from './access.js';
import type { IdentityData, SessionRow } from './identity.data.js';
import { passwordMatches } from './passwords.js';
import type { SignInThrottle } from './throttle.js';

const IDLE_MS = 12 * 3_600_000;
const LONGEST_MS = 7 * 24 * 3_600_000;
const TOUCH_MS = 5 * 60_000;

export interface SignedIn {
  readonly actor: Actor;
  readonly sessionId: string;
  readonly email: string;
  readonly organisationName: string;
}

export class IdentityService {
  constructor(
    private readonly data: IdentityData,
    private readonly throttle: SignInThrottle,
    private readonly clock: Clock,
    private readonly metrics: Metrics,
    private readonly notes: AuditNotes,
  ) {}

  /**
   * @returns the token for the cookie; only its hash is stored
   * @throws AppError SIGN_IN_FAILED alike for unknown address and wrong password, TOO_MANY after repeated failures
   */
  async signIn(input: {
    email: string;
    password: string;
    organisationId: string | null;
    address: string;
    userAgent: string;
  }): Promise<{ token: string; signedIn: SignedIn }> {
    const email = input.email.trim().toLowerCase();
    if (email.length > 254 || input.password.length > 1000) throw badInput('email', 'That is too long.', 'Shorten it.');
    const now = this.clock.now();
    await this.throttle.check(email, input.address, now);
    const known = await this.data.candidates(email);
    const candidates = known.filter(
      (candidate) => (input.organisationId ?? candidate.organisation_id) === candidate.organisation_id,
    );
    const matching = [];
    for (const candidate of candidates.length === 0 ? [null] : candidates) {
      if (await passwordMatches(candidate?.password_hash ?? null, input.password)) matching.push(candidate);
    }
    const [found] = matching;
    if (!found) {
      await this.throttle.failed(email, input.address, now);
      this.metrics.signIns.inc({ outcome: 'failed' });
      for (const { organisation_id: organisationId, member_id: memberId } of candidates)
        this.notes.later({ organisationId, memberId }, 'sign-in.failed', { address: input.address });
      throw new AppError({ code: 'SIGN_IN_FAILED' });
    }
    await this.throttle.check(email, input.address, now);
    if (matching.length > 1) {
      const names = matching
        .map((candidate) => `${candidate?.organisation_name} (${candidate?.organisation_id})`)
        .join(', ');
      throw badInput(
        'organisation',
        `This address belongs to several organisations: ${names}.`,
        'Say which one you mean.',
      );
    }
    await this.throttle.succeeded(email, input.address);
    const token = randomBytes(32).toString('base64url');
    await this.data.openSession(found.organisation_id, {
      id: hashToken(token),
      memberId: found.member_id,
      at: now,
      expiresAt: new Date(now.getTime() + IDLE_MS),
      userAgent: input.userAgent.slice(0, 300),
    });
    const signedIn = await this.resume(token);
    if (!signedIn) throw new AppError({ code: 'SIGN_IN_FAILED' });
    this.metrics.signIns.inc({ outcome: 'succeeded' });
    await this.notes.note(signedIn.actor, 'sign-in', { address: input.address });
    return { token, signedIn };
  }

  /** Who holds this token now, null when it is unknown, expired, revoked, or the member is no longer active. */
  async resume(token: string): Promise<SignedIn | null> {
    if (token.length > 200) return null;
    const now = this.clock.now();
    const id = hashToken(token);
    const row = await this.data.session(id, now);
    if (!row) return null;
    if (now.getTime() - row.last_seen_at.getTime() > TOUCH_MS) {
      await this.data.touchSession(row.organisation_id, id, now, IDLE_MS, LONGEST_MS);
    }
    return { actor: actorOf(row), sessionId: id, email: row.email, organisationName: row.organisation_name };
  }

  async signOut(signedIn: SignedIn | null): Promise<void> {
    if (signedIn === null) return;
    await this.data.revokeSession(signedIn.actor.organisationId, signedIn.sessionId, this.clock.now());
    await this.notes.note(signedIn.actor, 'sign-out', {});
  }

  async operatorName(actor: Actor): Promise<string | null> {
    return actor.operatorId === undefined ? null : await this.data.operatorName(actor.organisationId, actor.operatorId);
  }
}

function actorOf(row: SessionRow): Actor {
  return {
    organisationId: row.organisation_id,
    memberId: row.member_id,
    name: row.name,
    role: row.role,
    ...(row.operator_id === null ? {} : { operatorId: row.operator_id }),
  };
}

function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
