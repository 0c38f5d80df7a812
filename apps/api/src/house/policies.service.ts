import { civilDateAt, isPolicyKind, policyAt, policyBodies, policyDay } from '@tallywing/rules';
import type { Policy, PolicyKind } from '@tallywing/rules';
import type { Clock } from '../common/clock.js';
import { instantOf } from '../common/clock.js';
import { badInput } from '../common/errors.js';
import type { Connection, Database } from '../database/database.js';
import { authorise, roles } from '../identity/access.js';
import type { Actor } from '../identity/access.js';
import { checkedText } from './checks.js';
import { changeHouse, expectRevision } from './house-entry.data.js';
import type { Subject } from './house-entry.data.js';
import { addPolicy, policyVersions } from './policies.data.js';
import type { PolicyRow } from './policies.data.js';

export interface SetPolicy {
  readonly kind: string;
  readonly expectedVersion: number;
  readonly from: string;
  readonly reason: string;
  readonly readingAge?: unknown;
  readonly dayCount?: unknown;
  readonly weakSource?: unknown;
}

const kinds = Object.keys(policyBodies) as readonly PolicyKind[];
const fields = { 'reading-age': 'readingAge', 'day-count': 'dayCount', 'weak-source': 'weakSource' } as const;
const names: Readonly<Record<PolicyKind, string>> = {
  'reading-age': 'Age of meter readings',
  'day-count': 'Count of days',
  'weak-source': 'Sources that want a say-so',
};

/** What the house sets for the judgement of its aircraft, from a day on and with a reason. No version is ever rewritten. */
export class PoliciesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor | null) {
    authorise(actor, 'organisation.read');
    return await this.database.withOrganisation(actor, (connection) => this.all(connection, actor));
  }

  /**
   * Adds a version. Its stamp goes with every verdict, so every aircraft of the house is judged again.
   * @throws AppError BAD_INPUT naming the field, STALE_REVISION where another version came meanwhile
   */
  async set(actor: Actor | null, input: SetPolicy) {
    authorise(actor, 'organisation.write');
    const { kind } = input;
    if (!isPolicyKind(kind))
      throw badInput('input.kind', 'There is no such policy.', `Use one of: ${kinds.join(', ')}.`);
    const body = readBody(kind, input);
    const from = this.checkedDay(input.from);
    const reason = checkedText(input.reason, 'input.reason', 'why the house sets it so');
    return await changeHouse(this.database, this.clock, actor, async (connection, now) => {
      const own = (await policyVersions(connection, actor.organisationId)).filter((each) => each.kind === kind);
      const last = own.at(-1);
      const subject: Subject = { kind: 'policy', id: kind, name: names[kind] };
      await expectRevision(connection, actor, subject, last?.version ?? 0, input.expectedVersion);
      const version = (last?.version ?? 0) + 1;
      const policy = { kind, version, from, body } as Policy;
      await addPolicy(connection, actor.organisationId, { ...policy, reason, memberId: actor.memberId, at: now });
      return {
        answer: one(await this.all(connection, actor), kind),
        entry: {
          kind: 'policy.set',
          subject,
          before: last === undefined ? null : { from: last.effective_on, ...last.body },
          after: { from, ...body, reason },
        },
      };
    });
  }

  private async all(connection: Connection, actor: Actor) {
    const versions = await policyVersions(connection, actor.organisationId);
    const today = instantOf(this.clock.now());
    return kinds.map((kind) => nodeOf(kind, versions, today));
  }

  /** Somewhere on earth it is still the day before: nothing that was shown yesterday changes. */
  private checkedDay(from: string): string {
    const field = 'input.from';
    if (!policyDay.safeParse(from).success) throw badInput(field, 'This is not a day.', 'Write it as YYYY-MM-DD.');
    const earliest = civilDateAt(instantOf(this.clock.now()), 'Pacific/Pago_Pago');
    if (from < earliest)
      throw badInput(field, `${from} is past; what was judged by then stays.`, 'Let it count from today or later.');
    return from;
  }
}

function readBody(kind: PolicyKind, input: SetPolicy): Policy['body'] {
  const name = fields[kind];
  const found = policyBodies[kind].safeParse(input[name] ?? null);
  const [issue] = found.error?.issues ?? [];
  if (!found.success)
    throw badInput(
      ['input', name, ...(issue?.path ?? []).map(String)].join('.'),
      `This ${issue?.message ?? 'cannot be read'}.`,
      'Correct it and set the policy again.',
    );
  const by = 'by' in found.data ? found.data.by : [];
  const strange = by.findIndex((each) => !roles.some((role) => role === each));
  if (strange >= 0)
    throw badInput(`input.weakSource.by.${strange}`, 'There is no such role.', `Use some of: ${roles.join(', ')}.`);
  return found.data;
}

function one<T extends { readonly kind: string }>(list: readonly T[], kind: string): T {
  const found = list.find((each) => each.kind === kind);
  if (found === undefined) throw new Error(`there is no policy ${kind}`);
  return found;
}

function nodeOf(kind: PolicyKind, all: readonly PolicyRow[], today: string) {
  const versions = all.filter((each) => each.kind === kind);
  const policies = versions.map(({ version, effective_on: from, body }) => ({ kind, version, from, body }) as Policy);
  return {
    kind,
    version: versions.at(-1)?.version ?? 0,
    inForce: policyAt(policies, kind, today, 'UTC')?.version ?? null,
    versions: versions
      .map((each) => ({
        version: each.version,
        from: each.effective_on,
        body: each.body,
        reason: each.reason,
        setBy: each.set_by,
        setAt: instantOf(each.set_at),
      }))
      .reverse(),
  };
}
