import { ApolloClient, ApolloLink, HttpLink, InMemoryCache, type TypePolicies } from '@apollo/client';
import { relayStylePagination } from '@apollo/client/utilities';
import { ErrorLink } from '@apollo/client/link/error';
import { tap } from 'rxjs';
import { noteAnswer } from './live/last-answer.js';
import { problemOf } from './problem.js';

/** Fired when any answer says that the session is over, so that the frame can ask to sign in and keep the page. */
export const signedOutEvent = 'tallywing:signed-out';

/* Pages of one list are joined; another filter is another list. */
const typePolicies: TypePolicies = {
  Query: {
    fields: {
      readyBoard: relayStylePagination(['profile', 'at', 'hoursAhead', 'filter']),
      findings: relayStylePagination(['filter', 'at', 'hoursAhead']),
      dueAhead: relayStylePagination(['from', 'to', 'filter']),
      databaseCurrency: relayStylePagination(['at', 'filter']),
      meterSheet: relayStylePagination(['filter']),
      takingOn: relayStylePagination(['filter']),
      catalogue: relayStylePagination(['filter']),
      houseEntries: relayStylePagination(),
      audit: relayStylePagination(['filter']),
      reverseTrace: relayStylePagination(['calibrationId']),
    },
  },
  Aircraft: { fields: { history: relayStylePagination(['from']) } },
  // There is one house: what is asked of it apart belongs together.
  House: { merge: true },
  // Verdicts of one aircraft differ by moment; they are parts of the answer they came in.
  ProfileVerdict: { keyFields: false },
  // The id of a meter is its own within one aircraft only.
  MeterNow: { keyFields: false },
  MeterOnSheet: { keyFields: false },
};

/** The one client. Cookies carry the session; the extra header keeps plain cross-site forms out. */
export function makeClient(): ApolloClient {
  const watch = new ErrorLink(({ error }) => {
    if (problemOf(error).code === 'SIGNED_OUT') window.dispatchEvent(new Event(signedOutEvent));
  });
  const answered = new ApolloLink((operation, forward) => forward(operation).pipe(tap(noteAnswer)));
  const http = new HttpLink({
    uri: '/graphql',
    credentials: 'same-origin',
    headers: { 'apollo-require-preflight': 'true' },
  });
  return new ApolloClient({
    link: ApolloLink.from([watch, answered, http]),
    cache: new InMemoryCache({ typePolicies }),
    defaultOptions: {
      // A verdict from the cache may be shown while the fresh one travels, never instead of it.
      watchQuery: { fetchPolicy: 'cache-and-network', nextFetchPolicy: 'cache-first' },
      query: { fetchPolicy: 'network-only' },
    },
  });
}
