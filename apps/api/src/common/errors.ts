import { GraphQLError } from 'graphql';
import type { GraphQLFormattedError } from 'graphql';
import { AppLog, correlationId } from './logging.js';

/** Why the rules or the order of things did not take a change. */
export interface Refusal {
  /** Which of the changes sent, from 0; null for the request as a whole. */
  readonly change: number | null;
  readonly code: string;
  readonly field: string;
  readonly message: string;
  readonly wayOut: string;
}

/** The closed vocabulary: everything a caller can be told. */
export type Problem =
  | { readonly code: 'SIGNED_OUT' }
  | { readonly code: 'SIGN_IN_FAILED' }
  | { readonly code: 'FORBIDDEN'; readonly action: string }
  | { readonly code: 'NOT_FOUND'; readonly what: string; readonly field?: string }
  | { readonly code: 'BAD_INPUT'; readonly field: string; readonly reason: string; readonly wayOut: string }
  | {
      readonly code: 'STALE_REVISION';
      /** What was changed, where it is not an aircraft record: `entry of Ada Brook`. */
      readonly what?: string;
      readonly revision: number;
      readonly changedBy: string;
      readonly changedAt: string;
      /** The screen keeps what was typed, as it does for an aircraft record. */
      readonly kept?: true;
      /** Of the catalogue: the version now in force. */
      readonly currentId?: string;
    }
  | { readonly code: 'KEY_REUSED' }
  | { readonly code: 'REFUSED'; readonly refusals: readonly Refusal[] }
  | { readonly code: 'TOO_LARGE'; readonly limit: string }
  | { readonly code: 'TOO_MANY'; readonly retryAfterSeconds: number }
  | { readonly code: 'UNAVAILABLE'; readonly reason: string; readonly wayOut?: string }
  | { readonly code: 'INTERNAL'; readonly reference: string };

export type ProblemCode = Problem['code'];

/** The status on plain routes. GraphQL answers keep 200 once execution began, as GraphQL over HTTP asks. */
const statuses: Readonly<Record<ProblemCode, number>> = {
  SIGNED_OUT: 401,
  SIGN_IN_FAILED: 401,
  FORBIDDEN: 403,
  NOT_FOUND: 404,
  BAD_INPUT: 400,
  STALE_REVISION: 409,
  KEY_REUSED: 409,
  REFUSED: 422,
  TOO_LARGE: 413,
  TOO_MANY: 429,
  UNAVAILABLE: 503,
  INTERNAL: 500,
};

export class AppError extends Error {
  constructor(readonly problem: Problem) {
    super(describe(problem).message);
    this.name = 'AppError';
  }
}

/** Shorthand for the commonest one: names the field by its path and says what to do. */
export function badInput(field: string, reason: string, wayOut: string): AppError {
  return new AppError({ code: 'BAD_INPUT', field, reason, wayOut });
}

export interface Told {
  readonly message: string;
  readonly extensions: Readonly<Record<string, unknown>> & { readonly code: ProblemCode; readonly wayOut: string };
}

/** Each problem in words, once. `extensions` carries code, way out, and what a screen needs to help. */
export function describe(problem: Problem): Told {
  const tell = (message: string, wayOut: string, more: Readonly<Record<string, unknown>> = {}): Told => ({
    message,
    extensions: { code: problem.code, wayOut, ...more, ...requestId() },
  });
  switch (problem.code) {
    case 'SIGNED_OUT':
      return tell('You are signed out.', 'Sign in and try again; what you typed is kept on this device.');
    case 'SIGN_IN_FAILED':
      return tell(
        'That address and password do not go together.',
        'Check both, or ask your manager for a new password.',
        {
          field: 'password',
        },
      );
    case 'FORBIDDEN':
      return tell('Your role may not do this.', 'Ask a manager of your organisation.', { action: problem.action });
    case 'NOT_FOUND':
      return tell(`There is no such ${problem.what}.`, 'Go back to the list and choose again.', {
        ...(problem.field === undefined ? {} : { field: problem.field }),
      });
    case 'BAD_INPUT':
      return tell(problem.reason, problem.wayOut, { field: problem.field });
    case 'STALE_REVISION': {
      const { revision, changedBy, changedAt, what, kept, currentId } = problem;
      return tell(
        `The ${what ?? 'aircraft record'} was changed by ${changedBy} meanwhile.`,
        what === undefined
          ? 'Load the record again; your draft is kept. Look at what changed, then record the work.'
          : `${kept ? 'Nothing was saved; your draft is kept' : 'Nothing was saved'}. Load it again, look at what changed, then save yours.`,
        {
          revision,
          changedBy,
          changedAt,
          ...(currentId === undefined ? {} : { currentId, field: 'input.expectedId' }),
        },
      );
    }
    case 'KEY_REUSED':
      return tell('This request key was used before with other content.', 'Send the request again with a new key.', {
        field: 'input.key',
      });
    case 'REFUSED': {
      const [first] = problem.refusals;
      const field = first === undefined ? 'input' : refusalField(first);
      return tell(
        first?.message ?? 'The work cannot be recorded like this.',
        first?.wayOut ?? 'Change it and try again.',
        {
          field,
          refusals: problem.refusals.map((refusal) => ({ ...refusal, field: refusalField(refusal) })),
        },
      );
    }
    case 'TOO_LARGE':
      return tell(`The request is larger than allowed (${problem.limit}).`, 'Send less at once.');
    case 'TOO_MANY':
      return tell('Too many tries.', `Wait ${problem.retryAfterSeconds} seconds and try again.`, {
        retryAfterSeconds: problem.retryAfterSeconds,
      });
    case 'UNAVAILABLE':
      return tell(
        problem.reason,
        `Nothing was changed. ${problem.wayOut ?? 'Try again in a moment; repeating is safe.'}`,
      );
    case 'INTERNAL':
      return tell(
        'Something went wrong on our side.',
        `Nothing was changed. Try again; if it stays, give this reference: ${problem.reference}.`,
        {
          reference: problem.reference,
        },
      );
  }
}

/** The id that the log lines of the request carry; absent where nobody asked over the network. */
function requestId(): { readonly requestId?: string } {
  const id = correlationId();
  return id === 'none' ? {} : { requestId: id };
}

function refusalField(refusal: Refusal): string {
  const place = refusal.change === null ? 'input' : `input.changes.${refusal.change}`;
  return refusal.field === '' ? place : `${place}.${refusal.field}`;
}

export function statusOf(problem: Problem): number {
  return statuses[problem.code];
}

/** Turns whatever was thrown into one of ours; what nobody foresaw is logged whole and told as a reference only. */
export function toProblem(error: unknown, reference: string, log: AppLog): Problem {
  if (error instanceof AppError) return error.problem;
  const code = (error as { code?: unknown } | null)?.code;
  if (typeof code === 'string') {
    if (unreachable.has(code) || code.startsWith('57P') || code.startsWith('08')) {
      return { code: 'UNAVAILABLE', reason: 'The database does not answer.' };
    }
    const reason = noRoom.get(code);
    if (reason !== undefined) {
      log.failure(reference, error);
      const wayOut = 'Tell whoever runs this server; what you typed is kept. Repeating is safe once it is mended.';
      return { code: 'UNAVAILABLE', reason, wayOut };
    }
    if (unkeepable.has(code) || (code === '22P02' && /type json/.test((error as Error).message))) {
      return {
        code: 'BAD_INPUT',
        field: 'input',
        reason: 'A text holds a character that cannot be kept.',
        wayOut: 'Take out what is not a letter, digit or sign (it often comes with pasted text), then send it again.',
      };
    }
    // 55P03 lock not available, 40P01 deadlock, 40001 serialisation, 57014 cancelled by the time limit.
    if (['55P03', '40P01', '40001', '57014'].includes(code)) {
      return { code: 'UNAVAILABLE', reason: 'Somebody else is changing the same thing right now.' };
    }
  }
  const message = error instanceof Error ? error.message : '';
  if (message === WAITED_TOO_LONG) return { code: 'UNAVAILABLE', reason: 'More is asked than the database takes now.' };
  if (broken.test(message)) return { code: 'UNAVAILABLE', reason: 'The database does not answer.' };
  log.failure(reference, error);
  return { code: 'INTERNAL', reference };
}

/** The database answers, but takes nothing. */
const noRoom: ReadonlyMap<string, string> = new Map([
  ['53100', 'The disk of the database is full.'],
  ['ENOSPC', 'The disk is full.'],
  ['53200', 'The database has no memory left.'],
  ['25006', 'The database takes no changes now.'],
]);
/** Null characters and halves of characters. */
const unkeepable = new Set(['22021', '22P05']);
/** The library of the database gives these no code. */
const WAITED_TOO_LONG = 'timeout exceeded when trying to connect';
const broken = /^(Connection terminated|Client has encountered a connection error)/;

const unreachable = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ETIMEDOUT',
  'EPIPE',
  'ENOTFOUND',
  'P1001',
  'P2024',
  '53300',
]);

/**
 * The error formatter of the GraphQL server. Requests that never began to execute (malformed, unknown fields, wrong
 * variables) are BAD_INPUT with the place; the library's own codes do not get out.
 */
export function formatGraphQLError(
  formatted: GraphQLFormattedError,
  error: unknown,
  reference: string,
  log: AppLog,
): GraphQLFormattedError {
  const original = error instanceof GraphQLError ? (error.originalError ?? error) : error;
  const place = {
    ...(formatted.locations === undefined ? {} : { locations: formatted.locations }),
    ...(formatted.path === undefined ? {} : { path: formatted.path }),
  };
  const code = formatted.extensions?.['code'];
  if (!(original instanceof AppError) && typeof code === 'string' && code in requestFaults) {
    const fault = requestFaults[code as keyof typeof requestFaults];
    const told = describe({
      code: 'BAD_INPUT',
      field: fieldOf(formatted.message) ?? fault.field,
      reason: withoutValue(formatted.message),
      wayOut: fault.wayOut,
    });
    return { ...told, ...place };
  }
  return { ...describe(toProblem(original, reference, log)), ...place };
}

const requestFaults = {
  GRAPHQL_PARSE_FAILED: { field: 'query', wayOut: 'Mend the query at the place named.' },
  GRAPHQL_VALIDATION_FAILED: { field: 'query', wayOut: 'Compare the query with the schema.' },
  BAD_USER_INPUT: { field: 'variables', wayOut: 'Compare the value named with the schema.' },
  BAD_REQUEST: { field: 'query', wayOut: 'Send JSON with a "query" by POST, content type application/json.' },
  OPERATION_RESOLUTION_FAILURE: { field: 'operationName', wayOut: 'Name one of the operations in the query.' },
  PERSISTED_QUERY_NOT_SUPPORTED: { field: 'extensions', wayOut: 'Send the whole query.' },
  PERSISTED_QUERY_NOT_FOUND: { field: 'extensions', wayOut: 'Send the whole query.' },
} as const;

/** The library repeats the whole value that it did not like; the field and what is wrong with it are enough. */
function withoutValue(message: string): string {
  const reason = /got invalid value [\s\S]*; ([^;]+)$/.exec(message)?.[1];
  return reason ?? message;
}

/** `Variable "$input" got invalid value -1 at "input.changes[0].hours"` names the field as callers write it. */
function fieldOf(message: string): string | null {
  const at = /at "([^"]+)"/.exec(message)?.[1] ?? /Variable "\$([^"]+)"/.exec(message)?.[1];
  return at === undefined ? null : at.replace(/\[(\d+)\]/g, '.$1');
}
