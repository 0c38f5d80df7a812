import { randomUUID } from 'node:crypto';
import { changeInput } from './inputs.js';

export interface Problem {
  readonly message: string;
  readonly path?: readonly (string | number)[];
  readonly extensions: {
    readonly code: string;
    readonly field?: string;
    readonly wayOut?: string;
    readonly [more: string]: unknown;
  };
}

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- answers are read by tests that name what they expect
export type Data = any;

export interface Answer {
  readonly status: number;
  readonly data?: Data;
  readonly errors?: readonly Problem[];
}

/** Somebody at a browser: keeps the cookie. */
export class Client {
  cookie = '';

  constructor(readonly url: string) {}

  async signIn(email: string, password: string): Promise<Answer> {
    return await this.ask(
      `mutation ($email: String!, $password: String!) { signIn(email: $email, password: $password) { id role } }`,
      { email, password },
    );
  }

  async ask(
    query: string,
    variables: Readonly<Record<string, unknown>> = {},
    headers: Readonly<Record<string, string>> = {},
  ): Promise<Answer> {
    const response = await fetch(`${this.url}/graphql`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        accept: 'application/graphql-response+json,application/json;q=0.9',
        cookie: this.cookie,
        ...headers,
      },
      body: JSON.stringify({ query, variables }),
    });
    const [set] = response.headers.getSetCookie();
    if (set !== undefined) this.cookie = set.split(';')[0] ?? '';
    return { status: response.status, ...((await response.json()) as object) };
  }

  /** Asks and gives the data; a problem fails the test with its words. */
  async data(query: string, variables: Readonly<Record<string, unknown>> = {}): Promise<Data> {
    const answer = await this.ask(query, variables);
    if (answer.errors !== undefined) throw new Error(JSON.stringify(answer.errors, null, 2));
    return answer.data;
  }

  /** Asks and gives the first problem's code and field. */
  async problem(query: string, variables: Readonly<Record<string, unknown>> = {}): Promise<Problem['extensions']> {
    const { errors } = await this.ask(query, variables);
    return errors?.[0]?.extensions ?? { code: 'none' };
  }

  record(
    aircraftId: string,
    expectedRevision: number,
    changes: readonly { readonly kind: string }[],
    key: string = randomUUID(),
  ): Promise<Answer> {
    return this.send({ aircraftId, expectedRevision, key, changes: changes.map(changeInput) });
  }

  /** The same with the input as it goes over the wire, however wrong. */
  send(input: Readonly<Record<string, unknown>>): Promise<Answer> {
    return this.ask(
      `mutation ($input: CommitChangesInput!) { commitChanges(input: $input) {
        revision firstEntry lastEntry opened closed verdicts { was is profile { id } } aircraft { id registration revision } } }`,
      { input },
    );
  }
}
