import { ApolloClient, ApolloLink, HttpLink, InMemoryCache } from '@apollo/client';
import { ErrorLink } from '@apollo/client/link/error';
import { problemOf } from './problem.js';

/** Fired when any answer says that the session is over, so that the frame can ask to sign in and keep the page. */
export const signedOutEvent = 'tallywing:signed-out';

/** The one client. Cookies carry the session; the extra header keeps plain cross-site forms out. */
export function makeClient(): ApolloClient {
  const watch = new ErrorLink(({ error }) => {
    if (problemOf(error).code === 'SIGNED_OUT') window.dispatchEvent(new Event(signedOutEvent));
  });
  const http = new HttpLink({
    uri: '/graphql',
    credentials: 'same-origin',
    headers: { 'apollo-require-preflight': 'true' },
  });
  return new ApolloClient({
    link: ApolloLink.from([watch, http]),
    cache: new InMemoryCache(),
    defaultOptions: {
      // A verdict from the cache may be shown while the fresh one travels, never instead of it.
      watchQuery: { fetchPolicy: 'cache-and-network', nextFetchPolicy: 'cache-first' },
      query: { fetchPolicy: 'network-only' },
    },
  });
}
