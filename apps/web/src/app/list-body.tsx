import { useState, type ReactNode } from 'react';
import { Button } from '../ui/button.js';
import { Loading, Trouble } from '../ui/states.js';
import { ProblemNote } from './problem-note.js';
import { problemOf, type Problem } from './problem.js';

export interface ListBodyProps<Answer> {
  readonly what: string;
  readonly answer: Answer | undefined;
  readonly loading: boolean;
  readonly error: unknown;
  readonly onRetry: () => void;
  readonly onMore: (after: string | null) => Promise<unknown>;
  readonly children: (answer: Answer) => ReactNode;
}

interface Paged {
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
  readonly totalCount: number;
  readonly edges: readonly unknown[];
}

/** A list that comes in pages: loading, trouble, the list itself, and the next page. What is shown already stays. */
export function ListBody<Answer extends Paged>(props: ListBodyProps<Answer>) {
  const { what, answer, loading, error, onRetry, onMore, children } = props;
  const trouble = error && !loading ? problemOf(error) : null;
  const told = trouble && <Trouble title={trouble.title} wayOut={trouble.wayOut} onRetry={onRetry} />;
  if (!answer) return told ?? <Loading what={what} />;
  return (
    <div className="tw-stack" aria-busy={loading}>
      {told}
      {children(answer)}
      {answer.pageInfo.hasNextPage && <More answer={answer} loading={loading} onMore={onMore} />}
    </div>
  );
}

function More<Answer extends Paged>(props: Pick<ListBodyProps<Answer>, 'loading' | 'onMore'> & { answer: Answer }) {
  const { answer, loading, onMore } = props;
  const [problem, setProblem] = useState<Problem | null>(null);
  async function more() {
    setProblem(null);
    await onMore(answer.pageInfo.endCursor).catch((error: unknown) => setProblem(problemOf(error)));
  }
  return (
    <div className="tw-row">
      <p className="tw-print-only">
        Printed are {answer.edges.length} of {answer.totalCount}: show more before printing to have all.
      </p>
      <Button busy={loading} onClick={() => void more()}>
        Show more ({answer.edges.length} of {answer.totalCount})
      </Button>
      <ProblemNote problem={problem} />
    </div>
  );
}
