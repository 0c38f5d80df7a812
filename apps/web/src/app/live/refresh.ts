import type { ApolloClient, DocumentNode, ObservableQuery, OperationVariables } from '@apollo/client';

/** For `useQuery` of a screen whose forms stand on what it read: pushes leave it as it is, and saving tells what changed meanwhile. */
export const still = { context: { still: true } } as const;

/**
 * Asks again for everything that is shown, with as many pages as are open, and puts all of it on the screen in one go: nothing
 * blinks, shrinks or jumps meanwhile, and where an answer fails what is shown stays.
 * @throws what the server or the network had to say
 */
export async function refreshShown(client: ApolloClient): Promise<void> {
  const shown = [...client.getObservableQueries('active')].filter((each) => each.options.context?.['still'] !== true);
  const fresh = (await Promise.all(shown.map((each) => pagesOf(client, each)))).flat();
  client.cache.batch({
    update: (cache) => {
      for (const page of fresh) cache.writeQuery(page);
    },
  });
}

interface Page {
  readonly query: DocumentNode;
  readonly variables: OperationVariables;
  readonly data: Record<string, unknown>;
}

async function pagesOf(client: ApolloClient, shown: ObservableQuery): Promise<Page[]> {
  const { query, variables } = shown;
  const wanted = entriesOf(shown.getCurrentResult().data);
  const pages: Page[] = [];
  for (let after: unknown = undefined, had = 0; ;) {
    const asked = after === undefined ? variables : { ...variables, after };
    const { data } = await client.query<Record<string, unknown>>({
      query,
      variables: asked,
      fetchPolicy: 'no-cache',
    });
    if (!data) return pages;
    pages.push({ query, variables: asked, data });
    const list = listIn(data);
    had += list?.edges.length ?? 0;
    if (!takesAfter(query) || !list?.pageInfo.hasNextPage || had >= wanted) return pages;
    after = list.pageInfo.endCursor;
  }
}

interface List {
  readonly edges: readonly unknown[];
  readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string | null };
}

/** The list that an answer pages through: the first one with page information, however deep. */
function listIn(data: unknown): List | null {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return null;
  if ('edges' in data && 'pageInfo' in data) return data as List;
  for (const inner of Object.values(data)) {
    const found = listIn(inner);
    if (found) return found;
  }
  return null;
}

const entriesOf = (data: unknown): number => listIn(data)?.edges.length ?? 0;

function takesAfter(query: DocumentNode): boolean {
  return query.definitions.some(
    (each) =>
      each.kind === 'OperationDefinition' &&
      each.variableDefinitions?.some(({ variable }) => variable.name.value === 'after'),
  );
}
