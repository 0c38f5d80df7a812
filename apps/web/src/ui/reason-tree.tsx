import { StatusMark } from './status-mark.js';
import type { Status } from './status-words.js';
import { sourceStatusWords, type Source } from './source.js';
import './facts.css';
import './reason-tree.css';

export type ReasonOutcome = 'met' | 'not-met' | 'cannot-tell' | 'not-applicable';

/** One clause made ready to read: a fact held against a limit, or a group of clauses. */
export interface Reason {
  readonly id: string;
  readonly outcome: ReasonOutcome;
  readonly title: string;
  /** For a group: how its members decide, in words ('all of', 'any one of'). */
  readonly asks?: string | undefined;
  readonly fact?: string | undefined;
  readonly limit?: string | undefined;
  /** Where the fact was recorded. */
  readonly recorded?: readonly string[] | undefined;
  /** Facts that nobody has recorded. */
  readonly missing?: readonly string[] | undefined;
  readonly source?: Source | undefined;
  /** What would change this clause, and when it changes by itself. */
  readonly changes?: readonly string[] | undefined;
  readonly members: readonly Reason[];
}

const outcomeWords: Readonly<Record<ReasonOutcome, string>> = {
  met: 'Met',
  'not-met': 'Not met',
  'cannot-tell': 'Cannot tell',
  'not-applicable': 'Does not apply',
};

const outcomeShape: Readonly<Record<ReasonOutcome, Status>> = {
  met: 'yes',
  'not-met': 'no',
  'cannot-tell': 'cannot-tell',
  'not-applicable': 'not-wanted',
};

interface ReasonTreeProps {
  readonly reasons: readonly Reason[];
  readonly openTo?: number;
  /** Inside a clause that was opened already. */
  readonly inner?: boolean;
}

/** Opens clause by clause, with the keyboard too; the first, and what decides against, is open from the start. */
export function ReasonTree({ reasons, openTo = 2, inner = false }: ReasonTreeProps) {
  return (
    <ul className="tw-reasons">
      {reasons.map((reason) => (
        <li key={reason.id}>
          <ReasonItem reason={reason} openTo={openTo} first={!inner} />
        </li>
      ))}
    </ul>
  );
}

function ReasonItem({ reason, openTo, first }: { reason: Reason; openTo: number; first: boolean }) {
  const decides = reason.outcome === 'not-met' || reason.outcome === 'cannot-tell';
  return (
    <details className="tw-reason" open={first || (decides && openTo > 0)}>
      <summary>
        <span className="tw-reason-outcome">
          <OutcomeMark outcome={reason.outcome} />
        </span>
        <span>
          {reason.title}
          {reason.asks && <span className="tw-soft"> — {reason.asks}</span>}
        </span>
      </summary>
      <div className="tw-reason-body">
        <ReasonFacts reason={reason} />
        {reason.members.length > 0 && <ReasonTree reasons={reason.members} openTo={openTo - 1} inner />}
      </div>
    </details>
  );
}

/** Shape, word and colour of what a clause comes to. */
export function OutcomeMark({ outcome }: { outcome: ReasonOutcome }) {
  return <StatusMark status={outcomeShape[outcome]} word={outcomeWords[outcome]} />;
}

function ReasonFacts({ reason }: { reason: Reason }) {
  const { fact, limit, recorded, missing, source, changes } = reason;
  if (!fact && !limit && !recorded?.length && !missing?.length && !source && !changes?.length) return null;
  return (
    <dl className="tw-facts">
      {fact && <Fact name="Found">{fact}</Fact>}
      {limit && <Fact name="Limit">{limit}</Fact>}
      {recorded?.length ? <Fact name="Recorded in">{recorded.join('; ')}</Fact> : null}
      {missing?.length ? <Fact name="Not recorded">{missing.join('; ')}</Fact> : null}
      {source && (
        <Fact name="Source">
          {source.document} {source.paragraph}, {source.edition} <SourceStatus status={source.status} />
        </Fact>
      )}
      {changes?.length ? <Fact name="Changes">{changes.join('; ')}</Fact> : null}
    </dl>
  );
}

function Fact({ name, children }: { name: string; children: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** How well a source is known, in words. Anything but a text that was read is set apart. */
export function SourceStatus({ status }: { status: Source['status'] }) {
  return (
    <span className="tw-source-status" data-firm={status === 'verified' || undefined}>
      {sourceStatusWords[status]}
    </span>
  );
}
