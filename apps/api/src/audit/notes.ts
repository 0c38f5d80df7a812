import type { Clock } from '../common/clock.js';
import { correlationId } from '../common/logging.js';
import type { AppLog } from '../common/logging.js';
import type { Database, OrganisationScope } from '../database/database.js';
import { addNote } from './audit.data.js';
import type { NoteKind } from './audit.data.js';

const SAME_AGAIN_MS = 60_000;
const MOST_REMEMBERED = 5000;

/** Notes what people did that changes nothing and so would leave no trace. */
export class AuditNotes {
  private readonly lately = new Map<string, number>();

  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly log: AppLog,
  ) {}

  /** @param detail never a secret: what was tried, from where, what was taken away */
  async note(
    scope: OrganisationScope & { readonly memberId: string },
    kind: NoteKind,
    detail: Readonly<Record<string, string | number>>,
  ): Promise<void> {
    const { organisationId, memberId } = scope;
    await this.database.withOrganisation({ organisationId }, (connection) =>
      addNote(connection, organisationId, { memberId, kind, detail, at: this.clock.now() }),
    );
  }

  /**
   * Somebody signed in asked for what their role may not do. The same again within a minute is not noted again, so that a page
   * that goes on asking fills nothing; and the refusal stands whether or not it can be noted.
   */
  refused(scope: OrganisationScope & { readonly memberId: string }, action: string, door: string): void {
    const same = [scope.organisationId, scope.memberId, action, door].join(' ');
    const now = this.clock.now().getTime();
    if (now - (this.lately.get(same) ?? -Infinity) < SAME_AGAIN_MS) return;
    if (this.lately.size > MOST_REMEMBERED) this.lately.clear();
    this.lately.set(same, now);
    this.later(scope, 'refused', { action, door });
  }

  /** For what must not wait for its note: its time would tell a stranger whether an account exists. */
  later(...[scope, kind, detail]: Parameters<AuditNotes['note']>): void {
    this.note(scope, kind, detail).catch((error: unknown) => {
      this.log.failure(correlationId(), error);
    });
  }
}
