import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { getOperationAST, GraphQLError, parse, specifiedRules, validate } from 'graphql';
import type { ExecutionArgs, GraphQLSchema } from 'graphql';
import { useServer } from 'graphql-ws/use/ws';
import { WebSocketServer } from 'ws';
import type { WebSocket } from 'ws';
import { describe, formatGraphQLError } from '../common/errors.js';
import { boundedOperation, limits } from '../common/limits.js';
import { correlationId } from '../common/logging.js';
import type { AppLog } from '../common/logging.js';
import type { Actor } from '../identity/access.js';
import type { SignedIn } from '../identity/identity.service.js';
import type { Follower } from './follower.js';
import type { LiveService } from './live.service.js';

/** What the resolver of a subscription sees. */
export interface SocketContext {
  readonly actor: Actor;
  readonly follower: Follower;
}

export interface SocketParts {
  readonly server: Server;
  readonly schema: GraphQLSchema;
  readonly live: LiveService;
  readonly log: AppLog;
  readonly isForeign: (request: IncomingMessage) => boolean;
  readonly whoIs: (request: IncomingMessage) => Promise<SignedIn | null>;
}

/** A connection that does not close when it is asked to is cut after this. */
const CLOSING_MS = 1000;

/**
 * Subscriptions over a web socket at /graphql. A page of somebody else's is refused before the socket opens; who is not signed
 * in is told so and closed, since a browser shows its page no other kind of refusal.
 */
export function openSocket(parts: SocketParts): void {
  const { server, log } = parts;
  const sockets = new WebSocketServer({ noServer: true, maxPayload: limits.socketMessageBytes });
  const contexts = new WeakMap<IncomingMessage, SocketContext>();
  speakGraphQL(sockets, contexts, parts);
  server.on('upgrade', (request: IncomingMessage, raw: Duplex, head: Buffer) => {
    raw.on('error', () => {
      raw.destroy();
    });
    if (new URL(request.url ?? '/', 'http://here').pathname !== '/graphql') refuse(raw, '404 Not Found');
    else if (parts.isForeign(request)) refuse(raw, '403 Forbidden');
    else {
      parts
        .whoIs(request)
        .then((signedIn) => {
          sockets.handleUpgrade(request, raw, head, (socket) => {
            const follower = take(socket, signedIn, parts.live);
            if (signedIn === null || follower === null) return;
            contexts.set(request, { actor: signedIn.actor, follower });
            sockets.emit('connection', socket, request);
            // The library would write every broken connection to the error output.
            socket.removeAllListeners('error').on('error', () => {
              socket.terminate();
            });
          });
        })
        .catch((error: unknown) => {
          log.failure('live', error);
          refuse(raw, '503 Service Unavailable');
        });
    }
  });
}

/** Takes a connection in, or closes it with the reason. */
function take(socket: WebSocket, signedIn: SignedIn | null, live: LiveService): Follower | null {
  const follower = live.join(signedIn, ({ code, reason }) => {
    socket.on('error', () => undefined); // It may break while it closes, and is cut below.
    socket.close(code, reason);
    setTimeout(() => {
      socket.terminate();
    }, CLOSING_MS).unref();
  });
  if (follower !== null)
    socket.once('close', () => {
      live.leave(follower);
    });
  return follower;
}

function speakGraphQL(
  sockets: WebSocketServer,
  contexts: WeakMap<IncomingMessage, SocketContext>,
  { schema, log }: SocketParts,
): void {
  const format = (error: GraphQLError) => formatGraphQLError(error.toJSON(), error, correlationId(), log);
  useServer(
    {
      connectionInitWaitTimeout: 5000,
      onSubscribe: ({ extra, subscriptions }, _id, { query, variables, operationName }) => {
        if (Object.keys(subscriptions).length > limits.subscriptionsPerSocket) {
          return [refusal(`One connection carries ${limits.subscriptionsPerSocket} subscriptions.`, 'End one first.')];
        }
        return checked(schema, query, variables, operationName, contexts.get(extra.request));
      },
      onError: (_context, _id, _payload, errors) =>
        errors.map((error) => (error.extensions['code'] === undefined ? format(error) : error.toJSON())),
      onNext: (_context, _id, _payload, _args, { data, errors }) =>
        errors && { data: data ?? null, errors: errors.map(format) },
    },
    sockets,
  );
}

/** The operation, ready to run, or what is wrong with it: the same limits as for queries, and subscriptions only. */
function checked(
  schema: GraphQLSchema,
  query: string,
  variableValues: Record<string, unknown> | null | undefined,
  operationName: string | null | undefined,
  contextValue: SocketContext | undefined,
): ExecutionArgs | readonly GraphQLError[] {
  try {
    const document = parse(query);
    const faults = validate(schema, document, [...specifiedRules, boundedOperation]);
    if (faults.length > 0)
      return faults.map((fault) => refusal(fault.message, 'Compare the operation with the schema.'));
    if (getOperationAST(document, operationName)?.operation !== 'subscription')
      return [refusal('Only subscriptions go over this connection.', 'Send queries and mutations by POST.')];
    return { schema, document, variableValues, operationName, contextValue };
  } catch (error) {
    return [refusal((error as Error).message, 'Mend the operation at the place named.')];
  }
}

function refusal(reason: string, wayOut: string): GraphQLError {
  const { message, extensions } = describe({ code: 'BAD_INPUT', field: 'query', reason, wayOut });
  return new GraphQLError(message, { extensions: { ...extensions } });
}

function refuse(raw: Duplex, status: string): void {
  raw.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}
