import { badInput } from './errors.js';
import { limits } from './limits.js';

/** A page in the form of the GraphQL Cursor Connections specification. */
export interface Connection<Node> {
  readonly edges: readonly { readonly cursor: string; readonly node: Node }[];
  readonly pageInfo: {
    readonly hasNextPage: boolean;
    readonly hasPreviousPage: boolean;
    readonly startCursor: string | null;
    readonly endCursor: string | null;
  };
  readonly totalCount: number;
}

export interface PageRequest {
  readonly first: number;
  /** The sort key of the last row seen, null for the start. */
  readonly after: readonly string[] | null;
}

/**
 * Reads `first` and `after`.
 * @throws AppError BAD_INPUT for a negative or overlong page or a cursor that is not one of ours
 */
export function readPage(
  first: number | null | undefined,
  after: string | null | undefined,
  keys: number,
): PageRequest {
  const size = first ?? limits.usualPage;
  if (size < 0 || size > limits.page) {
    throw badInput(
      'first',
      `A page holds 0 to ${limits.page} rows.`,
      `Ask for at most ${limits.page} and go on from endCursor.`,
    );
  }
  return { first: size, after: after === null || after === undefined ? null : readCursor(after, keys) };
}

function readCursor(cursor: string, keys: number): readonly string[] {
  try {
    const key = JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')) as unknown;
    if (Array.isArray(key) && key.length === keys && key.every((part) => typeof part === 'string')) return key;
  } catch {
    // Falls through to the refusal below.
  }
  throw badInput(
    'after',
    'This is not a cursor of this list.',
    'Use an endCursor from the same list, or leave it out.',
  );
}

/**
 * @param rows up to `first + 1` rows after the cursor: the extra one only tells that there is more
 */
export function connectionOf<Row, Node>(
  page: PageRequest,
  rows: readonly Row[],
  totalCount: number,
  keyOf: (row: Row) => readonly string[],
  nodeOf: (row: Row) => Node,
): Connection<Node> {
  const edges = rows.slice(0, page.first).map((row) => ({
    cursor: Buffer.from(JSON.stringify(keyOf(row))).toString('base64url'),
    node: nodeOf(row),
  }));
  return {
    edges,
    pageInfo: {
      hasNextPage: rows.length > page.first,
      hasPreviousPage: page.after !== null && edges.length > 0,
      startCursor: edges[0]?.cursor ?? null,
      endCursor: edges.at(-1)?.cursor ?? null,
    },
    totalCount,
  };
}
