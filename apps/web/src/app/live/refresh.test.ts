import { ApolloClient, ApolloLink, gql, InMemoryCache, Observable } from '@apollo/client';
import { relayStylePagination } from '@apollo/client/utilities';
import { expect, test } from 'vitest';
import { refreshShown, still } from './refresh.js';

const Findings = gql`
  query Findings($after: String) {
    findings(after: $after) {
      edges {
        cursor
        node {
          id
          text
        }
      }
      pageInfo {
        hasNextPage
        endCursor
      }
    }
  }
`;

/** A server with so many findings, two a page. */
function house(count: number) {
  const state = { count, text: 'old', down: false, asked: 0 };
  const link = new ApolloLink(({ variables }) => {
    state.asked += 1;
    if (state.down) return new Observable((to) => to.error(new TypeError('no network')));
    const from = Number(variables['after'] ?? 0);
    const edges = Array.from({ length: Math.min(2, state.count - from) }, (_, n) => ({
      __typename: 'FindingEdge',
      cursor: String(from + n + 1),
      node: { __typename: 'Finding', id: `f${from + n}`, text: state.text },
    }));
    const end = from + edges.length;
    const pageInfo = { __typename: 'PageInfo', hasNextPage: end < state.count, endCursor: String(end) };
    return new Observable((to) => {
      to.next({ data: { findings: { __typename: 'FindingConnection', edges, pageInfo } } });
      to.complete();
    });
  });
  const client = new ApolloClient({
    link,
    cache: new InMemoryCache({ typePolicies: { Query: { fields: { findings: relayStylePagination() } } } }),
  });
  return { state, client };
}

/** A screen that shows the list with so many pages open; keeps everything that it was given to show. */
async function screen(client: ApolloClient, pages: number) {
  const query = client.watchQuery<{ findings: { edges: { node: { id: string; text: string } }[] } }>({
    query: Findings,
    fetchPolicy: 'cache-and-network',
    nextFetchPolicy: 'cache-first',
    notifyOnNetworkStatusChange: true,
  });
  const seen: { shown: string; loading: boolean; error: unknown }[] = [];
  query.subscribe(({ data, loading, error }) => {
    const edges = (data?.findings?.edges ?? []) as { node: { id: string; text: string } }[];
    seen.push({ shown: edges.map(({ node }) => `${node.id} ${node.text}`).join(', '), loading, error });
  });
  await expect.poll(() => seen.at(-1)?.shown).toContain('f0');
  for (let page = 1; page < pages; page += 1) {
    await query.fetchMore({ variables: { after: String(page * 2) } });
    await expect.poll(() => seen.at(-1)?.shown).toContain(`f${page * 2}`);
  }
  return seen;
}

test('all open pages are asked again and shown in one go', async () => {
  const { state, client } = house(7);
  const seen = await screen(client, 3);
  await expect.poll(() => seen.at(-1)?.shown).toBe('f0 old, f1 old, f2 old, f3 old, f4 old, f5 old');
  const before = seen.length;
  Object.assign(state, { text: 'new', asked: 0 });
  await refreshShown(client);
  await expect.poll(() => seen.length).toBeGreaterThan(before);
  expect(state.asked).toBe(3);
  expect(seen.slice(before)).toEqual([
    { shown: 'f0 new, f1 new, f2 new, f3 new, f4 new, f5 new', loading: false, error: undefined },
  ]);
});

test('a list that became shorter ends where it ends now', async () => {
  const { state, client } = house(6);
  const seen = await screen(client, 3);
  state.count = 3;
  await refreshShown(client);
  await expect.poll(() => seen.at(-1)?.shown).toBe('f0 old, f1 old, f2 old');
});

test('where the network fails, what is shown stays as it is', async () => {
  const { state, client } = house(3);
  const seen = await screen(client, 1);
  const before = [...seen];
  state.down = true;
  await expect(refreshShown(client)).rejects.toThrow('no network');
  expect(seen).toEqual(before);
  Object.assign(state, { down: false, text: 'new' });
  await refreshShown(client);
  await expect.poll(() => seen.at(-1)?.shown).toBe('f0 new, f1 new');
});

test('what a form stands on is not asked again under the hands of whoever fills it in', async () => {
  const { state, client } = house(2);
  const query = client.watchQuery({ query: Findings, ...still });
  query.subscribe(() => undefined);
  await expect.poll(() => state.asked).toBe(1);
  await refreshShown(client);
  expect(state.asked).toBe(1);
});
