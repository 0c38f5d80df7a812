import { CombinedGraphQLErrors, ServerError, ServerParseError } from '@apollo/client/errors';

/** What went wrong, in the closed vocabulary of the API plus the two that only a browser sees. */
export interface Problem {
  readonly code: string;
  readonly title: string;
  readonly wayOut?: string | undefined;
  /** Path of the input that is wrong: 'input.changes.0.unitInstall.place'. */
  readonly field?: string | undefined;
  /** Everything else the answer carried. */
  readonly details: Readonly<Record<string, unknown>>;
}

const titles: Readonly<Record<string, string>> = {
  OFFLINE: 'The server cannot be reached from here.',
  SIGNED_OUT: 'You are signed out.',
  FORBIDDEN: 'Your role does not allow this.',
  NOT_FOUND: 'There is nothing here by that name.',
  UNAVAILABLE: 'The server is not ready yet.',
  INTERNAL: 'The server failed on this.',
  TOO_MANY: 'Too many attempts in a short time.',
};

const waysOut: Readonly<Record<string, string>> = {
  OFFLINE: 'Check the network, then try again. What you typed is kept on this device.',
  SIGNED_OUT: 'Sign in again; what you typed is kept on this device.',
  FORBIDDEN: 'Ask the shop manager to do it or to change your role.',
  UNAVAILABLE: 'Wait a moment and try again.',
  INTERNAL: 'Try again. If it stays, tell whoever runs the server the time it happened.',
  TOO_MANY: 'Wait a minute and try again.',
};

const known = new Set([
  ...Object.keys(titles),
  'SIGN_IN_FAILED',
  'BAD_INPUT',
  'STALE_REVISION',
  'KEY_REUSED',
  'REFUSED',
  'TOO_LARGE',
]);

/** Every failure of a query or a mutation, as something a screen can show. */
export function problemOf(error: unknown): Problem {
  if (CombinedGraphQLErrors.is(error)) {
    const first = error.errors[0];
    const { code, field, wayOut, ...details } = (first?.extensions ?? {}) as Record<string, unknown>;
    return make(text(code) ?? 'INTERNAL', first?.message, text(wayOut), text(field), details);
  }
  if (ServerError.is(error) || ServerParseError.is(error)) {
    return make(codeOfStatus(error.statusCode), undefined, undefined, undefined, { status: error.statusCode });
  }
  // fetch rejects with a TypeError where nothing answered.
  return make(error instanceof TypeError ? 'OFFLINE' : 'INTERNAL', undefined, undefined, undefined, {});
}

/** The same from a plain route, which answers with `{ errors: [{ message, extensions }] }`. */
export function problemOfPlainAnswer(answer: unknown): Problem {
  const first = ((answer as { errors?: readonly { message?: string; extensions?: Record<string, unknown> }[] })
    ?.errors ?? [])[0];
  const { code, field, wayOut, ...details } = first?.extensions ?? {};
  return make(text(code) ?? 'INTERNAL', first?.message, text(wayOut), text(field), details);
}

function make(
  given: string,
  message: string | undefined,
  wayOut: string | undefined,
  field: string | undefined,
  details: Record<string, unknown>,
): Problem {
  const code = known.has(given) ? given : 'INTERNAL';
  return {
    code,
    title: message || titles[code] || 'This was refused.',
    wayOut: wayOut ?? waysOut[code],
    field,
    details,
  };
}

function codeOfStatus(status: number): string {
  if (status === 401) return 'SIGNED_OUT';
  if (status === 403) return 'FORBIDDEN';
  if (status === 413) return 'TOO_LARGE';
  if (status === 429) return 'TOO_MANY';
  return status === 502 || status === 503 || status === 504 ? 'UNAVAILABLE' : 'INTERNAL';
}

function text(value: unknown): string | undefined {
  return typeof value === 'string' && value !== '' ? value : undefined;
}
