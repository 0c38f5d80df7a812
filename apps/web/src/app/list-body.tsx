import type { ReactNode } from 'react';
import { Button } from '../ui/button.js';
import { Loading, Trouble } from '../ui/states.js';
import { problemOf } from './problem.js';

export interface ListBodyProps<Answer> {
  readonly what: string;
  readonly answer: Answer | undefined;
  readonly loading: boolean;
  readonly error: unknown;
  readonly onRetry: () => void;
  readonly onMore: (after: string | null) => void;
  readonly children: (answer: Answer) => ReactNode;
}

interface Paged {
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
  readonly totalCount: number;
  readonly edges: readonly unknown[];
}

/** A list that comes in pages: loading, trouble, the list itself, and the next page. */
export function ListBody<Answer extends Paged>(props: ListBodyProps<Answer>) {
  const { what, answer, loading, error, onRetry, onMore, children } = props;
  if (error && !loading) {
    const problem = problemOf(error);
    return <Trouble title={problem.title} wayOut={problem.wayOut} onRetry={onRetry} />;
  }
  if (!answer) return <Loading what={what} />;
  return (
    <div className="tw-stack" aria-busy={loading}>
      {children(answer)}
      {answer.pageInfo.hasNextPage && (
        <Button busy={loading} onClick={() => onMore(answer.pageInfo.endCursor)}>
          Show more ({answer.edges.length} of {answer.totalCount})
        </Button>
      )}
    </div>
  );
}
