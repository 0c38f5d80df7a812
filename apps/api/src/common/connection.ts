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

/** What the parts of a sort key are written as; anything else never reaches a statement. */
const parts = {
  text: () => true,
  number: (part: string) => /^-?\d{1,9}$/.test(part),
  // What has no moment stands at the end.
  instant: (part: string) => part === 'infinity' || /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(part),
};

/**
 * Reads `first` and `after`.
 * @param key what the sort key of the list is made of
 * @throws AppError BAD_INPUT for a negative or overlong page or a cursor that is not one of this list
 */
export function readPage(
  first: number | null | undefined,
  after: string | null | undefined,
  key: readonly (keyof typeof parts)[],
): PageRequest {
  const size = first ?? limits.usualPage;
  if (size < 0 || size > limits.page) {
    throw badInput(
      'first',
      `A page holds 0 to ${limits.page} rows.`,
      `Ask for at most ${limits.page} and go on from endCursor.`,
    );
  }
  return { first: size, after: after === null || after === undefined ? null : readCursor(after, key) };
}

function readCursor(cursor: string, key: readonly (keyof typeof parts)[]): readonly string[] {
  try {
    const given = JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')) as unknown;
    const fits = (part: unknown, at: number): part is string =>
      typeof part === 'string' && parts[key[at] ?? 'text'](part);
    if (Array.isArray(given) && given.length === key.length && given.every(fits)) return given;
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
